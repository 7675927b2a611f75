/**
 * `soilclock new` at a real terminal: a pseudo-terminal of Python types as a person does, and keeps what stands on the
 * screen. Skipped, by name, where there is no Python with pseudo-terminals.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { folderWith, root, soilclock } from '../kit.ts';

/** Waits for each text to appear behind the last one, then types; prints the screen and the exit code as JSON. */
const TYPIST = `
import fcntl, json, os, pty, select, struct, sys, termios, time
argv, steps, columns = json.load(sys.stdin)
child, screen = pty.fork()
if child == 0:
    fcntl.ioctl(0, termios.TIOCSWINSZ, struct.pack('HHHH', 24, columns, 0, 0))
    os.execve(argv[0], argv, dict(os.environ, TERM='xterm-256color'))
seen, read_to, over = '', 0, False
raw = b''
def look(seconds):
    global raw, seen, over
    if over or not select.select([screen], [], [], seconds)[0]: return
    try: part = os.read(screen, 65536)
    except OSError: part = b''
    if not part: over = True
    raw += part
    seen = raw.decode('utf-8', 'replace')
late = time.time() + 40
for wait, keys in steps:
    while seen.find(wait, read_to) < 0 and not over and time.time() < late: look(0.2)
    at = seen.find(wait, read_to)
    if at < 0:
        os.kill(child, 9)
        os.waitpid(child, 0)
        print(json.dumps(dict(screen=seen, code=-1, missing=wait)))
        sys.exit()
    read_to = at + len(wait)
    os.write(screen, keys.encode())
while not over and time.time() < late: look(0.2)
print(json.dumps(dict(screen=seen, code=os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]))))
`;

/** A text that appears, and what is typed then. */
type Step = readonly [wait: string, keys: string];

function typist(): boolean {
  try {
    execFileSync('python3', ['-c', 'import fcntl, os, pty, termios; os.waitstatus_to_exitcode'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** The environment of this process without what the runner of the tests says of colour. */
function environment(): NodeJS.ProcessEnv {
  const { FORCE_COLOR: _, ...others } = process.env;
  return { ...others, NO_COLOR: '1' };
}

function typed(cwd: string, steps: readonly Step[], argv: readonly string[] = [], columns = 80) {
  const command = [path.join(root, 'node_modules/.bin/node'), path.join(root, 'src/bin.cjs'), 'new', ...argv];
  const printed = execFileSync('python3', ['-c', TYPIST], {
    cwd,
    input: JSON.stringify([command, steps, columns]),
    encoding: 'utf8',
    env: environment(),
  });
  const { screen, ...rest } = JSON.parse(printed) as { screen: string; code: number; missing?: string };
  return { ...rest, screen: plain(screen), raw: screen };
}

/** The screen without the marks that move its cursor. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const plain = (screen: string): string => screen.replace(/\x1b\[[0-9;?]*[A-Za-z]/g, '').replaceAll('\r', '');

const ENTER = '\r';
const type = (wait: string, text: string): Step => [wait, text + ENTER];
const UNTIL_AREA = [
  type('Name', 'Plot: "7" 🌱'),
  type('Place', '43004'),
  type('Elevation', ''),
  type('Units', ''),
  type('Language of the plan', ''),
  type('Grass:', 'tall'),
  type('Program', ''),
];
const AREA = [type('Area 1', 'front: rectangle 50 x 40 ft'), type('Take off', ''), type('Area 2', '')];
const AFTER_AREA = ['Spreader', 'Width', 'dial', 'Days for', 'Hours', 'Reminders', 'Past weather', 'Forecast'].map(
  (wait) => type(wait, ''),
);

const has = typist();
const name = has
  ? 'a real terminal'
  : 'skipped: a real terminal, since Python 3 with pseudo-terminals is not installed';
describe.skipIf(!has)(name, () => {
  test('wrong answers are told why, and the file that is written checks strictly', async () => {
    const cwd = folderWith();
    const { code, screen, missing } = typed(cwd, [
      type('Name', 'Plot: "7" 🌱'),
      type('Place', '00000'),
      type('no place in the table', '?'),
      type('latitude, longitude:', 'somewhere'),
      type('is not understood', '43004'),
      type('Elevation', '900'),
      type('expected a length', '900 ft'),
      type('Units', 'both'),
      type('Allowed: us, metric', 'us'),
      type('Language of the plan', ''),
      type('Grass:', 'moss'),
      type('is not allowed here', 'tall'),
      type('Program', ''),
      type('Area 1', 'front: rectangel 50 x 40 ft'),
      type('exactly one shape; found rectangel', 'front: rectangle 50 x 40 ft'),
      type('2,000 sq ft', 'circle radius 60 ft'),
      type('Nothing is left', 'circle radius 6 ft'),
      type('1,887 sq ft', ''),
      type('Area 2', 'back: 4,200 sqft'),
      type('in all 6,087 sq ft', ''),
      type('Area 3', ''),
      type('Spreader', 'rotory'),
      type('Did you mean "rotary"', ''),
      ...AFTER_AREA.slice(1),
    ]);
    expect([code, missing]).toEqual([0, undefined]);
    expect(screen).toContain('lawn.yaml is written');
    expect(parse(readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8'))).toMatchObject({
      name: 'Plot: "7" 🌱',
      location: { zip: '43004', elevation: '900 ft' },
      areas: {
        front: { rectangle: ['50 ft', '40 ft'], less: [{ circle: { radius: '6 ft' } }] },
        back: { measured: '4200 sqft' },
      },
    });
    expect((await soilclock(cwd, ['check', '--strict', 'lawn.yaml'])).code).toBe(0);
  });

  test('80 columns hold every line, without colour', () => {
    const help = UNTIL_AREA.flatMap(([wait, keys]) => [type(wait, '?'), ['For example', keys] as const]);
    const { code, screen, raw } = typed(folderWith(), [...help, ...AREA, ...AFTER_AREA]);
    expect(code).toBe(0);
    expect(screen.split('\n').filter((line) => [...line].length > 80)).toEqual([]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colour is such a mark that ends in m
    expect(raw).not.toMatch(/\x1b\[[0-9;]*m/);
  });

  test('what is pasted at once answers one question a line', () => {
    const cwd = folderWith();
    const lines = [...UNTIL_AREA, ...AREA, ...AFTER_AREA].map(([, keys]) => keys).join('');
    expect(typed(cwd, [['Name', lines]]).code).toBe(0);
    expect(existsSync(path.join(cwd, 'lawn.yaml'))).toBe(true);
  });

  test.each([
    ['Ctrl-C at the first question', [['Name', '\x03']]],
    ['Ctrl-C in the middle of an answer', [...UNTIL_AREA, ['Area 1', 'front: rect\x03']]],
    ['Ctrl-C at the last question', [...UNTIL_AREA, ...AREA, ...AFTER_AREA.slice(0, -1), ['Forecast', '\x03']]],
    ['the end of the input', [...UNTIL_AREA, ['Area 1', '\x04']]],
  ] as const)('%s leaves no file, says so and exits with 2', (_, steps) => {
    const cwd = folderWith();
    const { code, screen } = typed(cwd, steps);
    expect([code, readdirSync(cwd), screen.trimEnd().endsWith('Nothing was written.')]).toEqual([2, [], true]);
  });

  test('a file that is there stays, and nothing is asked', () => {
    const cwd = folderWith();
    writeFileSync(path.join(cwd, 'lawn.yaml'), 'kept');
    const { code, screen } = typed(cwd, []);
    expect([code, readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8')]).toEqual([2, 'kept']);
    expect(screen).not.toContain('Name of the lawn');
  });

  test('with --yes nothing is asked at a terminal either', () => {
    const cwd = folderWith();
    const argv = ['--zip', '43004', '--grass', 'tall-fescue', '--area', 'front: 4200 sqft', '--yes'];
    expect(typed(cwd, [], argv).code).toBe(0);
    expect(existsSync(path.join(cwd, 'lawn.yaml'))).toBe(true);
  });
});
