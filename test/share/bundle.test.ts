/** One file of a program and what it extends: the same program, for whoever has not the other file. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { programChanges } from '../../src/emit/program-changes.ts';
import { readProgram } from '../../src/read/program.ts';
import { lookupFrom } from '../../src/shell/lookup.ts';
import { demoCopy, folderWith, LONG, lawnText, root, soilclock } from '../kit.ts';
import { read, SHARED } from './kit.ts';

const programs = path.join(root, 'programs');
const shipped = readdirSync(programs).filter((name) => name.endsWith('.yaml') && name !== 'products.yaml');
const extending = shipped.filter((name) => /^extends:/m.test(readFileSync(path.join(programs, name), 'utf8')));
const codesOf = (text: string): string[] => [...text.matchAll(/\[([a-z-]+)\]/g)].map(([, code]) => code!);
const CHILD = `kind: program
version: 1
id: child
name: Child
author: The neighbor
license: CC0-1.0
extends: base.yaml
steps:
  - { id: look, drop: true }
  - { id: feed, apply: { nutrient: { N: 0.5 lb/1000 sqft }, source: common-practice } }
`;
const family = () => folderWith({ 'child.yaml': CHILD, 'base.yaml': SHARED });

test('some shipped programs extend others', () => expect(extending.length).toBeGreaterThan(2));

describe.each(extending)('the bundle of %s', LONG, (name) => {
  const { cwd } = demoCopy();
  const bundle = `out/bundle/${name}`;
  const parsed = (file: string) => readProgram(read(cwd, file), file, lookupFrom(cwd));
  test('is written, is the same bytes again, and passes check as the original does', async () => {
    const first = await soilclock(cwd, ['check', '--bundle', `programs/${name}`]);
    const text = read(cwd, bundle);
    expect([first.code, await soilclock(cwd, ['check', '--bundle', `programs/${name}`])]).toEqual([0, first]);
    expect(read(cwd, bundle)).toBe(text);
    const checked = await soilclock(cwd, ['check', bundle]);
    expect([checked.code, codesOf(checked.stderr).sort()]).toEqual([0, codesOf(first.stderr).sort()]);
  });
  test('stands on its own and says all that the two files say', () => {
    const alone = readProgram(read(cwd, bundle), bundle);
    expect(alone.problems).toEqual([]);
    expect(alone.value).toEqual(parsed(`programs/${name}`).value);
    expect(programChanges(parsed(`programs/${name}`).data, alone.data)).toEqual([]);
  });
  test('names whom it is from', () => {
    const base = /^extends: (.*)$/m.exec(read(programs, name))![1]!;
    const { id, author, license } = parsed(`programs/${base}`).value!;
    expect(parsed(bundle).value!.basedOn).toEqual([expect.objectContaining({ id, author, license })]);
  });
  test('gives byte-equal seasons and feeds', async () => {
    const { grass } = parsed(bundle).value!;
    const lawn = lawnText(`products: [${programs}/products.yaml]\nfacts: { irrigated: true, thin: true }\n`)
      .replace('tall-fescue', grass[0]!)
      .replace(/^weather.*\n/m, '');
    const planned = async (program: string) => {
      const [, base = ''] = /^extends: (.*)$/m.exec(program) ?? [];
      const own = folderWith({
        'lawn.yaml': lawn,
        'program.yaml': program,
        ...(base !== '' && { [base]: read(programs, base) }),
      });
      const season = await soilclock(own, ['plan', 'lawn.yaml', '--as-of', '2027-04-02', '--json', '--out', 'out']);
      // A problem of a step stands at another line of the one file than of the two.
      const { problems, ...rest } = JSON.parse(season.stdout) as { problems: { code: string }[] };
      const codes = problems.map(({ code }) => code).sort();
      return [season.code, JSON.stringify(rest), codes, read(own, 'out/test-lawn.ics')] as const;
    };
    const original = await planned(read(programs, name));
    expect(original[0]).toBe(0);
    expect(await planned(read(cwd, bundle))).toEqual(original);
  });
});

describe('check --bundle', () => {
  test('joins steps, sources and authors', async () => {
    const cwd = family();
    expect((await soilclock(cwd, ['check', '--bundle', 'child.yaml'])).code).toBe(0);
    const { value } = readProgram(read(cwd, 'out/bundle/child.yaml'), 'child.yaml');
    expect([value?.steps.map(({ id }) => id), value?.author, value?.basedOn]).toEqual([
      ['feed'],
      'The neighbor',
      [
        {
          id: 'test-program',
          name: 'Test program',
          author: 'The keeper of Saltwether Island',
          license: 'CC-BY-4.0',
        },
      ],
    ]);
  });
  test('of a bundle is that bundle', async () => {
    const cwd = family();
    await soilclock(cwd, ['check', '--bundle', 'child.yaml']);
    const text = read(cwd, 'out/bundle/child.yaml');
    await soilclock(cwd, ['check', '--bundle', 'out/bundle/child.yaml']);
    expect(read(cwd, 'out/bundle/child.yaml')).toBe(text);
  });
  test('of a program that extends nothing is its own text', async () => {
    const cwd = folderWith({ 'alone.yaml': `# why\n${SHARED}` });
    await soilclock(cwd, ['check', '--bundle', 'alone.yaml']);
    expect(read(cwd, 'out/bundle/test-program.yaml')).toBe(`# why\n${SHARED}`);
  });
  test('writes nothing of a program with a mistake', async () => {
    const cwd = folderWith({ 'child.yaml': CHILD, 'base.yaml': SHARED.replace('work: spread', 'work: shovel') });
    expect((await soilclock(cwd, ['check', '--bundle', 'child.yaml'])).code).toBe(1);
    expect(readdirSync(cwd)).not.toContain('out');
  });
  test('takes programs alone', async () => {
    const { cwd, lawn } = demoCopy();
    expect(codesOf((await soilclock(cwd, ['check', '--bundle', lawn])).stderr)).toEqual(['bundle-kind']);
  });
  test('tells of texts that YAML would read as something else', async () => {
    const odd = ['"no"', '"01-02"', '"1e3"', '"0x1"', '"a: b # c"', '"two\\nlines"', '"~"', '"- x"', '"𝄞 ü"'];
    const cautions = `cautions: [${odd.join(', ')}]`;
    const cwd = folderWith({
      'child.yaml': `${CHILD}  - { id: odd, name: Odd, work: other, window: { opens: { date: 02-01 } }, ${cautions} }\n`,
      'base.yaml': SHARED,
    });
    await soilclock(cwd, ['check', '--bundle', 'child.yaml']);
    const { value } = readProgram(read(cwd, 'out/bundle/child.yaml'), 'child.yaml');
    expect(value?.steps.at(-1)?.cautions).toEqual(odd.map((one) => JSON.parse(one)));
  });
});
