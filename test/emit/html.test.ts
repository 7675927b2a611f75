/** What is inserted into a page stays text. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { html } from '../../src/emit/html.ts';
import { recordPage } from '../../src/emit/record-page.ts';
import { recordFrom } from '../record-kit.ts';

test('no text makes an element or leaves its attribute', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const inner = html`<b title="${text}">${text}</b>`.text.slice('<b title="'.length, -'</b>'.length);
      const [attribute = '', element = ''] = inner.split('">');
      expect(inner.split('">')).toHaveLength(2);
      expect(`${attribute}${element}`).not.toMatch(/[<>"']/);
    }),
  );
});

test('the page of a record neither runs nor loads anything', () => {
  const script = '<script src="http://a.example/a.js">';
  const page = recordPage(
    recordFrom(`- { date: 2027-04-01, work: spray, note: '${script}', by: '<img src=x onerror=alert(1)>' }`),
  );
  expect(page).toContain('&lt;script src=&quot;http://a.example/a.js&quot;&gt;');
  expect(page.match(/<(script|img|link|iframe|object|a)\b|@import|url\(/gi)).toBeNull();
});
