import * as v from 'valibot';
import { choosing, map, text } from './fields.ts';

/** Whether a program is named by an address, and not by a path. @example isAddress('https://lawns.example/a.yaml') //=> true */
export const isAddress = (ref: string): boolean => /^(?:https|webcal):\/\//.test(ref);

const EXPECTED = 'the path of a program file, or its address, which begins with https:// and has no #';
const plain = v.pipe(
  v.string(`wrong-type:${EXPECTED}`),
  // A path has no "://"; every other way to reach a file than https is refused here, before anybody tries it.
  v.regex(/^(?!\s*[A-Za-z][A-Za-z0-9+.-]*:\/\/)|^(?:https|webcal):\/\/[^\s#]+$/, `wrong-type:${EXPECTED}`),
);
const pinned = v.pipe(
  map({
    from: v.pipe(text, v.regex(/^(?:https|webcal):\/\/[^\s#]+$/, 'wrong-type:an address that begins with https://')),
    sha256: v.pipe(
      v.string('wrong-type:a SHA-256 of 64 digits, 0 to 9 and a to f, in quotes'),
      v.regex(/^[0-9a-fA-F]{64}$/, 'wrong-type:a SHA-256 of 64 digits, 0 to 9 and a to f'),
      v.toLowerCase(),
    ),
  }),
  v.transform(({ from, sha256 }) => pinnedRef(from, sha256)),
);

/** A program as a file names it: a path, an address, or an address with the SHA-256 of what stands there. */
export const programRef = choosing(
  (input) => (input !== null && typeof input === 'object' ? pinned : plain),
  () => [plain, pinned],
  'program-ref',
);

/** An address and its pin as one text; no server ever sees what stands behind the `#`. */
export const pinnedRef = (address: string, sha256: string): string => `${address.split('#')[0]}#sha256=${sha256}`;

/** The address of a reference, and the SHA-256 that it is pinned to; null where it is not. */
export function partsOfRef(ref: string): { readonly address: string; readonly sha256: string | null } {
  const [address = '', fragment = ''] = ref.split('#');
  const [, sha256 = null] = /^sha256=([0-9a-f]{64})$/.exec(fragment) ?? [];
  return { address: address.replace(/^webcal:/, 'https:'), sha256 };
}
