import { describe, expect, test } from 'vitest';
import { cleaned } from '../../src/base/text.ts';

describe('cleaned', () => {
  test('turns every line end into a line feed', () =>
    expect(cleaned('a\r\nb\rc\u0085d\u2028e\u2029f')).toBe('a\nb\nc\nd\ne\nf'));
  test('keeps tabs, accents, emoji and their joiners', () => expect(cleaned('a\té 👩🏽‍🌾')).toBe('a\té 👩🏽‍🌾'));
  test('takes out NUL', () => expect(cleaned('a\u0000b')).toBe('ab'));
  test('takes out lone surrogates', () => expect(cleaned('a\ud83cb\udf31')).toBe('ab'));
  test('makes no character of two halves that a control parted', () => expect(cleaned('\ud83c\u0000\udf31')).toBe(''));
  test('takes out bidi overrides', () => expect(cleaned('a\u202eb')).toBe('ab'));
  test('takes out the mark that makes Arabic letters of what follows', () => expect(cleaned('a\u061cb')).toBe('ab'));
});
