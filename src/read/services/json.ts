import * as v from 'valibot';
import { type Problem, problem } from '../../base/problem.ts';

/** An answer that cannot be read. */
export const nonsense = (service: string, reason: string): { readonly problem: Problem } => ({
  problem: problem('service-nonsense', { service, reason }, null),
});

/** An answer that says that nothing is there. */
export const empty = (service: string): { readonly problem: Problem } => ({
  problem: problem('service-empty', { service }, null),
});

/** The text of an answer by a schema, or why it is nonsense: not JSON, or which key is not as it should be. */
export function jsonAs<S extends v.GenericSchema>(
  schema: S,
  text: string,
  service: string,
): { readonly value: v.InferOutput<S> } | { readonly problem: Problem } {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    const start = text.slice(0, 40).replace(/\s+/g, ' ').trim();
    const cut = /^\s*[[{]/.test(text);
    return nonsense(
      service,
      text.trim() === '' ? 'it is empty' : cut ? 'its JSON breaks off' : `not JSON ("${start}")`,
    );
  }
  const result = v.safeParse(schema, data);
  if (result.success) return { value: result.output };
  const [issue] = result.issues;
  const where = (issue.path ?? []).map(({ key }: { key?: unknown }) => String(key)).join('.');
  return nonsense(service, `${where === '' ? 'it' : `"${where}"`} is not ${issue.expected ?? 'as expected'}`);
}
