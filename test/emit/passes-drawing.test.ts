import { expect, test } from 'vitest';
import { passesDrawing } from '../../src/emit/passes-drawing.ts';

test('a text in a drawing of the ways is text alone, without what could deceive a reader', () => {
  const svg = passesDrawing('plot <b> \u202e 7', [], [], () => ({ metres: 5, label: '5 m' }));
  expect(svg).toContain('<title>plot &lt;b&gt;  7</title>');
});
