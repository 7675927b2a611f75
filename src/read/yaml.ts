import {
  type Alias,
  Composer,
  CST,
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  LineCounter,
  type Node,
  type Pair,
  Parser,
  type YAMLMap,
} from 'yaml';
import { type Place, type Problem, problem } from '../base/problem.ts';

/** Where a value stands inside a file: keys and list positions from the root. */
export type Path = readonly (string | number)[];

/** A YAML file as plain data, with the way back from a path to its place. */
export interface YamlFile {
  readonly data: unknown;
  readonly problems: readonly Problem[];
  /** The place of the value at a path, or of its key; the nearest parent where there is none. */
  place(path: Path, part?: 'key' | 'value'): Place;
}

const LIMITS = { keys: 5000, entries: 20_000, depth: 40, aliases: 20, aliased: 20_000 } as const;
/** How much a file may hold: keys within one entry of its outermost list (the whole file, where it is none), keys, marks. */
export interface YamlSize {
  readonly keysInEntry: number;
  readonly keys: number;
  readonly marks: number;
}
const SMALL: YamlSize = { keysInEntry: LIMITS.keys, keys: LIMITS.keys, marks: LIMITS.entries };
/** A journal grows for decades. What costs is many keys in one map, and no entry needs many. */
export const LONG_LIST: YamlSize = { keysInEntry: LIMITS.keys, keys: 30_000, marks: 60_000 };
/** List entries, and the marks of which a hundred thousand in a row cost seconds. */
const COUNTED: ReadonlySet<string> = new Set<CST.TokenType>([
  'comma',
  'seq-item-ind',
  'flow-seq-end',
  'flow-map-end',
  'anchor',
  'tag',
  'doc-start',
  'doc-end',
]);
/** The most syntax errors that are told of one file; one stray mark can bring a quarter of a million. */
const MOST_ERRORS = 20;

/**
 * Reads YAML 1.2 (core schema, text keys) that a stranger may have written.
 *
 * Keys, depth and aliases are counted on the tokens before anything is composed: 0.4 MB of distinct keys or 800 bytes
 * of `? ` would otherwise cost seconds. Directives and `? ` keys are refused; `__proto__` is a key like any other and
 * never touches a prototype.
 */
export function readYaml(text: string, file: string, size: YamlSize = SMALL): YamlFile {
  if (text.length > MOST_KEPT_LENGTH || size !== SMALL) return parseYaml(text, file, size);
  const key = `${file}\n${text}`;
  const known = kept.get(key) ?? parseYaml(text, file, size);
  // The one that was asked for longest ago goes first.
  kept.delete(key);
  kept.set(key, known);
  for (const oldest of kept.keys()) if (kept.size > MOST_KEPT) kept.delete(oldest);
  return known;
}

/** A command asks for its program more than once, and a run of many lawns for the same few programs each time. */
const kept = new Map<string, YamlFile>();
const MOST_KEPT = 32;
const MOST_KEPT_LENGTH = 65_536;

function parseYaml(text: string, file: string, size: YamlSize): YamlFile {
  const source = text.replace(/^\uFEFF/, '');
  const lines = new LineCounter();
  const placeAt = (from: number, to: number): Place => {
    const { line, col } = lines.linePos(Math.min(from, source.length));
    return { file, line: Math.max(line, 1), column: Math.max(col, 1), length: Math.max(1, to - from) };
  };
  const start: Place = { file, line: 1, column: 1, length: 1 };
  const failed = (problems: Problem[]): YamlFile => ({ data: undefined, problems, place: () => start });

  const { tokens, refused } = tokensOf(source, lines, size, (offset, length) => placeAt(offset, offset + length));
  if (refused) return failed([refused]);
  const composer = new Composer({ version: '1.2', schema: 'core', stringKeys: true, uniqueKeys: true, merge: false });
  const [document, second] = [...composer.compose(tokens, true, source.length)];
  if (!document) return failed([]);
  if (second)
    return failed([problem('yaml-documents', { found: '---' }, placeAt(second.range[0], second.range[0] + 3))]);
  if (document.errors.length > 0) {
    return failed(
      document.errors
        .slice(0, MOST_ERRORS)
        .map(({ message, pos }) =>
          problem(
            'yaml-syntax',
            { reason: message.split('\n')[0]?.replace(/ at line \d+.*$/, '') ?? message },
            placeAt(pos[0], Math.min(pos[1], pos[0] + 40)),
          ),
        ),
    );
  }
  const pairOf = pairsByKey();
  const place = (path: Path, part: 'key' | 'value' = 'value'): Place => {
    const [from, to] = rangeOf(document, path, part, pairOf);
    const newline = source.indexOf('\n', from);
    return placeAt(from, newline === -1 ? to : Math.min(to, newline));
  };
  try {
    return { data: plain(document.contents, document, new Set(), { left: LIMITS.aliased }), problems: [], place };
  } catch (error) {
    if (!(error instanceof AliasTooLarge)) throw error;
    return failed([problem('yaml-alias', { limit: LIMITS.aliases }, placeAt(error.from, error.from + 1))]);
  }
}

/** The CST tokens of a source, or the first thing that is refused. */
function tokensOf(
  source: string,
  lines: LineCounter,
  size: YamlSize,
  placeAt: (offset: number, length: number) => Place,
) {
  const parser = new Parser(lines.addNewLine);
  lines.addNewLine(0);
  const tokens: CST.Token[] = [];
  let [keys, keysInEntry, entries, aliases, offset] = [0, 0, 0, 0, 0];
  const beginsEntry = outermostItems(source);
  const refuse = (refused: Problem) => ({ tokens, refused });
  for (const lexeme of new Lexer().lex(source)) {
    const type = CST.tokenType(lexeme);
    const from = offset;
    const here = () => placeAt(from, lexeme.length);
    if (type === 'directive-line') return refuse(problem('yaml-directive', { found: lexeme }, here()));
    if (type === 'explicit-key-ind') return refuse(problem('yaml-key-mark', { found: lexeme }, here()));
    if (type === 'seq-item-ind' && beginsEntry(offset)) keysInEntry = 0;
    if (beginsKey(type, parser) && (++keys > size.keys || ++keysInEntry > size.keysInEntry))
      return refuse(
        problem('yaml-too-many-keys', { limit: keys > size.keys ? size.keys : size.keysInEntry, of: 'keys' }, here()),
      );
    if (type !== null && COUNTED.has(type) && ++entries > size.marks)
      return refuse(problem('yaml-too-many-keys', { limit: size.marks, of: 'entries and marks' }, here()));
    if (type === 'alias' && ++aliases > LIMITS.aliases)
      return refuse(problem('yaml-alias', { limit: LIMITS.aliases }, here()));
    for (const token of parser.next(lexeme)) tokens.push(token);
    if (parser.stack.length > LIMITS.depth) return refuse(problem('yaml-too-deep', { limit: LIMITS.depth }, here()));
    // The lexer's own marks (byte order, document start, scalar) take no room in the source.
    if (!['\u{FEFF}', '\x02', '\x18', '\x1f'].includes(lexeme)) offset += lexeme.length;
  }
  for (const token of parser.end()) tokens.push(token);
  return { tokens, refused: null };
}

/** Tells the dashes of a file's outermost list by their column: that of the first one. */
function outermostItems(source: string): (offset: number) => boolean {
  let outermost: number | null = null;
  return (offset) => {
    const column = offset - (source.lastIndexOf('\n', offset - 1) + 1);
    outermost ??= column;
    return column === outermost;
  };
}

/** Whether a token stands for a key: its colon, but in `{a: 1, b}` the brace and each comma, since the colon may be left out. */
function beginsKey(type: CST.TokenType | null, { stack }: Parser): boolean {
  if (type === 'flow-map-start') return true;
  if (type !== 'map-value-ind' && type !== 'comma') return false;
  const flow = stack.findLast(
    (token): token is CST.FlowCollection => token.type === 'flow-collection' && token.end.length === 0,
  );
  return (flow?.start.type === 'flow-map-start') === (type === 'comma');
}

class AliasTooLarge extends Error {
  readonly from: number;
  constructor(from: number) {
    super('an alias contains itself or too much');
    this.from = from;
  }
}

/** How many more nodes the aliases of a document may bring, and the alias that is being written out. */
interface Budget {
  left: number;
  alias?: Alias | undefined;
}

const nameOf = (key: unknown): string => String(isScalar(key) ? key.value : key);

/** A node as plain data. Own keys alone are made, so that no key can reach a prototype. */
function plain(node: unknown, document: Document, inside: ReadonlySet<unknown>, budget: Budget): unknown {
  if (budget.alias && budget.left-- === 0) throw new AliasTooLarge(budget.alias.range?.[0] ?? 0);
  if (isAlias(node)) {
    const target = node.resolve(document);
    if (!target || inside.has(target)) throw new AliasTooLarge(node.range?.[0] ?? 0);
    const outer = budget.alias;
    budget.alias = outer ?? node;
    const value = plain(target, document, inside, budget);
    budget.alias = outer;
    return value;
  }
  if (isScalar(node)) return node.value;
  const within = new Set(inside).add(node);
  if (isSeq(node)) return node.items.map((entry) => plain(entry, document, within, budget));
  if (!isMap(node)) return null;
  const result = {};
  for (const { key, value } of node.items) {
    Object.defineProperty(result, nameOf(key), {
      value: plain(value, document, within, budget),
      enumerable: true,
      writable: true,
      configurable: true,
    });
  }
  return result;
}

type PairOf = (map: YAMLMap, key: string) => Pair | undefined;

/** Finds pairs by their keys, each map indexed once: a problem a key would otherwise cost the square of their number. */
function pairsByKey(): PairOf {
  const indexes = new Map<YAMLMap, ReadonlyMap<string, Pair>>();
  return (map, key) => {
    const index = indexes.get(map) ?? new Map(map.items.map((pair) => [nameOf(pair.key), pair]));
    indexes.set(map, index);
    return index.get(key);
  };
}

/** Offsets of the value at a path or of its key. */
function rangeOf(document: Document, path: Path, part: 'key' | 'value', pairOf: PairOf): readonly [number, number] {
  let node: unknown = document.contents;
  let range = (node as Node | null)?.range ?? [0, 0, 0];
  for (const [i, step] of path.entries()) {
    if (isAlias(node)) node = node.resolve(document);
    const pair = isMap(node) ? pairOf(node, String(step)) : undefined;
    const next: unknown = isSeq(node) ? node.items[Number(step)] : pair?.value;
    const wanted = part === 'key' && i === path.length - 1 && pair ? pair.key : (next ?? pair?.key);
    range = (wanted as Node | null | undefined)?.range ?? range;
    if (next === undefined || next === null) break;
    node = next;
  }
  return [range[0], range[1]];
}
