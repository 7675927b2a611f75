import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 of a text as hexadecimal, cut to `digits`. @example contentHash('', 8) //=> 'e3b0c442' */
export const contentHash = (text: string, digits = 16): string =>
  bytesToHex(sha256(utf8ToBytes(text))).slice(0, digits);

/** SHA-256 of a text in the letters a to p: a name made one way, in which nothing looks like a day. @example nameHash('', 4) //=> 'odla' */
export const nameHash = (text: string, letters = 16): string =>
  [...contentHash(text, letters)].map((digit) => 'abcdefghijklmnop'[Number.parseInt(digit, 16)]).join('');
