/** Programs and lawns judged by agronomy, for the tests of its rules. */
import { checkProgram } from '../../src/agronomy/check.ts';
import { parseDay } from '../../src/base/day.ts';
import { readProgram } from '../../src/read/program.ts';

const AS_OF = parseDay('2027-04-02') as number;

/** What is found in a program for a grass in a climate: the code, and the text in the file that it points at. */
export function found(
  steps: string,
  {
    grass = 'tall-fescue',
    climate = 'transition',
    extra = '',
  }: { grass?: string; climate?: string; extra?: string } = {},
): string[] {
  const text = `kind: program\nversion: 1\nid: p\nname: P\ngrass: [${grass}]\nclimate: [${climate}]\n${extra}steps:\n${steps}`;
  const parsed = readProgram(text, 'p.yaml');
  if (!parsed.value) throw new Error(JSON.stringify(parsed.problems));
  const lines = text.split('\n');
  return checkProgram(parsed, AS_OF).map(({ code, line, column, length }) => {
    const from = (column ?? 1) - 1;
    return `${code} at ${lines[(line ?? 1) - 1]?.slice(from, from + (length ?? 0))}`;
  });
}

/** Only the findings of one code. */
export const only = (code: string, findings: readonly string[]): string[] =>
  findings.filter((one) => one.startsWith(`${code} `));

export const step = (id: string, work: string, window: string, more = ''): string =>
  `  - { id: ${id}, name: ${id}, work: ${work}, source: common-practice, window: ${window}${more} }\n`;

/** A feed between two days. */
export const feed = (id: string, opens: string, closes: string, N: string, more = ''): string =>
  step(
    id,
    'spread',
    `{ opens: { date: ${opens} }, closes: { date: ${closes} } }`,
    `, apply: { nutrient: { N: ${N} lb/1000 sqft }${more} }`,
  );
