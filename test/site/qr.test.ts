/** The drawn code against ISO/IEC 18004:2015: its size (table 1), the three finder patterns and the timing pattern (6.3.3, 6.3.5). */
import { describe, expect, test } from 'vitest';
import { qrCode } from '../../src/emit/site/qr.ts';

/** The dark modules of a drawing, without the quiet zone. */
function modules(text: string) {
  const svg = qrCode(text, 'Address').text;
  const whole = Number(/viewBox="0 0 (\d+) /.exec(svg)?.[1]);
  const size = whole - 8;
  const dark = Array.from({ length: size }, () => new Array<boolean>(size).fill(false));
  for (const [, x, y, width] of svg.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let i = 0; i < Number(width); i++) dark[Number(y) - 4]![Number(x) - 4 + i] = true;
  return { svg, size, dark };
}
const FINDER = ['1111111', '1000001', '1011101', '1011101', '1011101', '1000001', '1111111'];
const { svg, size, dark } = modules('webcal://lawns.example/north-shore/north-shore.ics');
const cut = (x: number, y: number) =>
  FINDER.map((_, i) =>
    dark[y + i]!.slice(x, x + 7)
      .map((is) => (is ? '1' : '0'))
      .join(''),
  );

describe('a QR code', () => {
  test('has 17 + 4 v modules a side', () => expect([(size - 17) % 4, size >= 21]).toEqual([0, true]));
  test.each([
    ['upper left', 0, 0],
    ['upper right', size - 7, 0],
    ['lower left', 0, size - 7],
  ])('has a finder pattern %s', (_, x, y) => expect(cut(x, y)).toEqual(FINDER));
  test('has a timing pattern', () =>
    expect(dark[6]!.slice(8, size - 8)).toEqual(Array.from({ length: size - 16 }, (_, i) => i % 2 === 0)));
  test('has the dark module beside the lower left', () => expect(dark[size - 8]![8]).toBe(true));
  test('stands on white in any colour scheme', () => expect(svg).toContain('fill="#fff"'));
  test('differs with the text', () => expect(qrCode('a', '').text).not.toBe(qrCode('b', '').text));
  test('has a name for those who cannot see it', () => expect(svg).toContain('role="img" aria-label="Address"'));
});
