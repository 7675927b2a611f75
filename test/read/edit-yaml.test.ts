/** A YAML text is changed where it was asked for, and nowhere else. */
import { describe, expect, test } from 'vitest';
import { type Edit, edited } from '../../src/read/edit-yaml.ts';

const feed = (to: string | null): Edit[] => [{ path: ['shelf', 'feed'], to }];

describe('a value', () => {
  test.each([
    ['in braces', 'shelf: {feed:  22 lb , b: 1}  # shed\n', 'shelf: {feed:  17 lb , b: 1}  # shed\n'],
    ['on lines', 'shelf:\n  # new\n  feed: 22 lb # half\n  b: 1\n', 'shelf:\n  # new\n  feed: 17 lb # half\n  b: 1\n'],
    ['in quotes', 'shelf: { feed: "22 lb" }\n', 'shelf: { feed: 17 lb }\n'],
    [
      'between line ends of another system',
      'a: [1,2]\r\nshelf:\r\n  feed: 22 lb\r\n',
      'a: [1,2]\r\nshelf:\r\n  feed: 17 lb\r\n',
    ],
    ['behind a byte order mark', '\uFEFFshelf: { feed: 22 lb }\n', '\uFEFFshelf: { feed: 17 lb }\n'],
  ])('%s', (_, text, expected) => expect(edited(text, feed('17 lb'))).toBe(expected));
});

describe('a key that goes', () => {
  test.each([
    ['first in braces', 'shelf: { feed: 22 lb, b: 1 }\n', 'shelf: { b: 1 }\n'],
    ['last in braces', 'shelf: { b: 1, feed: 22 lb }\n', 'shelf: { b: 1 }\n'],
    [
      'on a line with a comment',
      'shelf:\n  a: 1\n  feed: 22 lb # half\n  # of b\n  b: 1\n',
      'shelf:\n  a: 1\n  # of b\n  b: 1\n',
    ],
    ['on several lines', 'shelf:\n  feed:\n    date: 1\n  b: 1\n', 'shelf:\n  b: 1\n'],
    ['at the end of the file', 'shelf:\n  b: 1\n  feed: 22 lb', 'shelf:\n  b: 1\n'],
    ['the only one of its map', 'a: 1\nshelf: { feed: 22 lb } # shed\nb: 2\n', 'a: 1\nb: 2\n'],
    ['that is not there', 'shelf: { b: 1 }\n', 'shelf: { b: 1 }\n'],
  ])('%s', (_, text, expected) => expect(edited(text, feed(null))).toBe(expected));
});

describe('a key that comes', () => {
  test.each([
    ['in braces', 'shelf: { b: 1 }\n', 'shelf: { feed: 17 lb, b: 1 }\n'],
    ['on lines', 'shelf:\n  b: 1\n', 'shelf:\n  feed: 17 lb\n  b: 1\n'],
    ['where there is no such map', 'a: 1\n', 'a: 1\n'],
  ])('%s', (_, text, expected) => expect(edited(text, feed('17 lb'))).toBe(expected));
});
