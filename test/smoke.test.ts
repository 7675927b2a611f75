import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { demoCopy, soilclock } from './kit.ts';

test('the demo plans, writes a feed and ends with how to subscribe', async () => {
  const { cwd, lawn } = demoCopy();
  const { code, stdout } = await soilclock(cwd, ['plan', lawn, '--as-of', '2027-04-02']);
  expect(code).toBe(0);
  expect(stdout).toContain('What now');
  expect(stdout).toMatch(/To subscribe:/);
  expect(readFileSync(path.join(cwd, 'out/site/saltwether-lawn.ics'), 'utf8')).toMatch(/^BEGIN:VCALENDAR\r\n/);
});
