import { isMap, isNode, isPair, type Pair, parseDocument, type YAMLMap } from 'yaml';

/** A change of a YAML text: the value at a path of keys; null takes the key away with it. */
export interface Edit {
  readonly path: readonly string[];
  readonly to: string | null;
}

/**
 * Changes values of a YAML text and nothing else: comments, quotes, spaces and line ends of all other lines stay.
 *
 * A key that is not there yet becomes the first of its map; a map whose last key goes, goes with it. What the outcome means
 * is for the caller to check, by reading it.
 *
 * @param text YAML without errors.
 * @example edited('shelf: { feed: 22 lb } # shed', [{ path: ['shelf', 'feed'], to: '17 lb' }]) //=> 'shelf: { feed: 17 lb } # shed'
 */
export function edited(text: string, edits: readonly Edit[]): string {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  return mark + edits.reduce(applied, text.slice(mark.length));
}

function applied(text: string, { path, to }: Edit): string {
  const document = parseDocument(text);
  const parent = path.length === 1 ? document.contents : document.getIn(path.slice(0, -1), true);
  if (!isMap(parent)) return text;
  const key = path.at(-1);
  const at = parent.items.findIndex((pair) => isPair(pair) && String(pair.key) === key);
  if (at >= 0) {
    if (to === null && parent.items.length === 1 && path.length > 1)
      return applied(text, { path: path.slice(0, -1), to });
    const [from, until] = to === null ? extent(text, parent, at) : valueRange(parent.items[at] as Pair);
    return text.slice(0, from) + (to ?? '') + text.slice(until);
  }
  const first = parent.items[0];
  if (to === null || first === undefined) return text;
  const [start] = keyRange(first as Pair);
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const after = parent.flow ? ', ' : newline + text.slice(lineStart, start);
  return `${text.slice(0, start)}${key}: ${to}${after}${text.slice(start)}`;
}

const rangeOf = (node: unknown): readonly [number, number] =>
  isNode(node) && node.range ? [node.range[0], node.range[1]] : [0, 0];

const keyRange = ({ key }: Pair): readonly [number, number] => rangeOf(key);

const valueRange = (pair: Pair): readonly [number, number] =>
  pair.value === null ? [keyRange(pair)[1], keyRange(pair)[1]] : rangeOf(pair.value);

/** What goes with a pair: in braces its comma, else its whole lines. */
function extent(text: string, { items, flow }: YAMLMap, at: number): readonly [number, number] {
  const [pair, next, previous] = [items[at] as Pair, items[at + 1], items[at - 1]];
  const [start, end] = [keyRange(pair)[0], valueRange(pair)[1]];
  if (flow) {
    if (next) return [start, keyRange(next as Pair)[0]];
    return [previous ? valueRange(previous as Pair)[1] : start, end];
  }
  const lineEnd = text[end - 1] === '\n' ? end : text.indexOf('\n', end) + 1;
  return [text.lastIndexOf('\n', start - 1) + 1, lineEnd === 0 ? text.length : lineEnd];
}
