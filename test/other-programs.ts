/** Other people's programs: run, looked for, and skipped by name where they are absent. */
import { execFileSync } from 'node:child_process';
import { describe } from 'vitest';

/** What a program prints. @throws Where it fails. */
export const run = (command: string, args: readonly string[], env = {}): string =>
  execFileSync(command, args, {
    encoding: 'utf8',
    env: { ...process.env, LC_ALL: 'C.UTF-8', PYTHONIOENCODING: 'utf-8', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
    maxBuffer: 1 << 28,
  });

/** Whether a program runs and ends well. */
export const runs = (command: string, args: readonly string[]): boolean => {
  try {
    run(command, args);
    return true;
  } catch {
    return false;
  }
};

/** Tests of one reader; where it is absent their name says so. */
export function readBy(reader: string, installed: boolean, tests: () => void): void {
  describe.skipIf(!installed)(installed ? reader : `skipped: ${reader} is not installed`, tests);
}

/** What khal needs to be told: a calendar in the folder `cal`, and instants as a feed writes them. */
export const khalConfig = (calendar = '', sections = ''): string => `[calendars]
[[feed]]
path = cal
type = calendar
${calendar}${sections}[locale]
local_timezone = UTC
default_timezone = UTC
timeformat = %H:%M
dateformat = %Y-%m-%d
longdateformat = %Y-%m-%d
datetimeformat = %Y-%m-%dT%H:%M:%SZ
longdatetimeformat = %Y-%m-%dT%H:%M:%SZ
`;
