/** A program at an address, lawns that name it, and the command that brings it. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Bringing } from '../../src/shell/share/bring-program.ts';
import type { ProgramNetwork } from '../../src/shell/share/fetch-program.ts';
import { type ProgramCommandOptions, programCommand } from '../../src/shell/share/program-command.ts';
import { folderWith, lawnText, programText } from '../kit.ts';

export const SHARED = programText(
  `  - id: feed
    name: Feed
    work: spread
    window: { opens: { date: 04-01, source: common-practice }, closes: { date: 05-01, source: common-practice } }
    apply: { nutrient: { N: 0.9 lb/1000 sqft }, source: common-practice }
  - id: look
    name: Look
    work: scout
    window: { opens: { date: 06-01, source: common-practice }, closes: { date: 06-20, source: common-practice } }
`,
  'climate: [transition]\nauthor: The keeper of Saltwether Island\nlicense: CC-BY-4.0\n',
);

/** A folder with a lawn that names this program. */
export const lawnFolder = (program: string, more: Readonly<Record<string, string>> = {}): string =>
  folderWith({
    'lawn.yaml': lawnText()
      .replace('program: program.yaml', `program: ${program}`)
      .replace(/^weather.*\n/m, ''),
    ...more,
  });

export const read = (cwd: string, file = 'lawn.yaml'): string => readFileSync(path.join(cwd, file), 'utf8');

/** Runs `program fetch` or `program update` in a folder. */
export async function bring(
  cwd: string,
  network: ProgramNetwork,
  {
    bringing = 'fetch',
    words = ['lawn.yaml'],
    ...options
  }: ProgramCommandOptions & { readonly bringing?: Bringing; readonly words?: readonly string[] } = {},
) {
  const [out, err]: [string[], string[]] = [[], []];
  const io = {
    stdout: (text: string) => void out.push(text),
    stderr: (text: string) => void err.push(text),
    cwd,
    now: () => Date.UTC(2027, 2, 1, 12),
    columns: 100,
  };
  const code = await programCommand(bringing, words, options, io, network);
  return { code, stdout: out.join(''), stderr: err.join('') };
}

/** The same as `--json` tells it. */
export async function brought(...[cwd, network, options]: Parameters<typeof bring>) {
  const { code, stdout } = await bring(cwd, network, { ...options, json: true });
  const { programs, problems } = JSON.parse(stdout) as {
    programs: { sha256: string; from: string; changes: { step: string | null; text: string }[] | null }[];
    problems: { code: string; severity: string; file: string; line: number; message: string }[];
  };
  return { code, programs, codes: problems.map((one) => one.code), problems };
}
