/** Which of some keys of a map have to stand, told once: the reader checks it, and a JSON Schema says it. */
import * as v from 'valibot';

/** Of these keys so many stand; or the first stands only with the second. Keys as they are written in a file. */
export type Standing =
  | { readonly of: readonly string[]; readonly least: 0 | 1; readonly most: number }
  | { readonly key: string; readonly needs: string };

export const oneOf = (...of: string[]): Standing => ({ of, least: 1, most: 1 });
export const someOf = (...of: string[]): Standing => ({ of, least: 1, most: of.length });
export const atMostOneOf = (...of: string[]): Standing => ({ of, least: 0, most: 1 });
export const needs = (key: string, needs: string): Standing => ({ key, needs });

/** A key of a file as the model has it. @example camel('rises-to') //=> 'risesTo' */
export const camel = (key: string): string => key.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());

/**
 * A check of which keys stand.
 *
 * @param message The code of the fault, once however many of the rules are broken.
 * @example v.pipe(map({ first: maybe(day), last: maybe(day) }), standing('trigger-frost', oneOf('first', 'last')))
 */
export function standing<T extends object>(message: string, ...rules: readonly Standing[]) {
  const holds = (value: T, rule: Standing): boolean => {
    const stands = (key: string) => (value as Record<string, unknown>)[camel(key)] !== undefined;
    if ('needs' in rule) return !stands(rule.key) || stands(rule.needs);
    const count = rule.of.filter(stands).length;
    return count >= rule.least && count <= rule.most;
  };
  const check = v.check<T, string>((value) => rules.every((rule) => holds(value, rule)), message);
  return { ...check, standing: rules };
}
