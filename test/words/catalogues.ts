/** Listens to the catalogues while plans are told: which texts were asked for, and with what. */
import { en, type Words } from '../../src/words/en.ts';
import { es } from '../../src/words/es.ts';

type Text = string | null | readonly string[] | ((...args: never[]) => string);

/** A text that a language was asked for. */
export interface Asked {
  readonly path: string;
  readonly args: readonly unknown[];
}

/** Every text of a catalogue by its path, such as `feed.hours.dry`. */
export function textsOf(words: object, path = ''): Map<string, Text> {
  return new Map(
    Object.entries(words).flatMap(([key, value]): [string, Text][] => {
      const own = path === '' ? key : `${path}.${key}`;
      const isTree = value !== null && typeof value === 'object' && !Array.isArray(value);
      return isTree ? [...textsOf(value, own)] : [[own, value as Text]];
    }),
  );
}

/** As they are, whoever listens. */
export const TEXTS = { en: textsOf(en), es: textsOf(es) };

/** Texts told anew with the same arguments, in each language. */
export const tell = (language: keyof typeof TEXTS, { path, args }: Asked): string => {
  const text = TEXTS[language].get(path);
  return typeof text === 'function' ? text(...(args as never[])) : [text ?? []].flat().join('\n');
};

/** Listens to a catalogue. @returns What was asked so far, and how to stop. */
export function listen(words: Words): { readonly asked: Asked[]; readonly stop: () => void } {
  const asked: Asked[] = [];
  const stops: (() => void)[] = [];
  const wrap = (tree: object, path: string): void => {
    for (const [key, value] of Object.entries(tree)) {
      const own = path === '' ? key : `${path}.${key}`;
      if (value !== null && typeof value === 'object' && !Array.isArray(value)) {
        wrap(value, own);
        continue;
      }
      const heard = (...args: unknown[]) => {
        asked.push({ path: own, args });
        return (value as (...all: unknown[]) => string)(...args);
      };
      const get = () => {
        if (typeof value === 'function') return heard;
        asked.push({ path: own, args: [] });
        return value;
      };
      Object.defineProperty(tree, key, { get, configurable: true, enumerable: true });
      stops.push(() =>
        Object.defineProperty(tree, key, { value, writable: true, configurable: true, enumerable: true }),
      );
    }
  };
  wrap(words, '');
  return {
    asked,
    stop: () => {
      for (const stop of stops) stop();
    },
  };
}

/** Words that choose between texts, and stand in none. */
const CHOOSING = new Set(
  `rises falls soil air first last min mean max cool warm lengthwise crosswise between again drought heat for-seed
  for-herbicide phosphorus potassium low medium high dropped skipped missed year application program place label lime P2O5 K2O
  file catch nozzle full only average average-clamped modified single-sine double-sine single-triangle double-triangle`.split(
    /\s+/,
  ),
);

/** The same with a mark in place of each text that was put in, so that it is known again wherever it stands. */
export function marked({ path, args }: Asked): Asked {
  let count = 0;
  const mark = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(mark);
    return typeof value !== 'string' || CHOOSING.has(value) ? value : `⟦${String.fromCharCode(65 + count++)}⟧`;
  };
  return { path, args: args.map(mark) };
}
