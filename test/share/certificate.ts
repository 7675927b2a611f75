/** A certificate that vouches for hosts of a test and for nobody else: made anew each time, without any tool of the machine. */
import { generateKeyPairSync, sign } from 'node:crypto';

/** A value of DER (ITU-T X.690): tag, length, content. */
function der(tag: number, ...parts: readonly Uint8Array[]): Buffer {
  const content = Buffer.concat(parts);
  const { length } = content;
  const size = length < 128 ? [length] : length < 256 ? [0x81, length] : [0x82, length >> 8, length & 255];
  return Buffer.concat([Buffer.from([tag, ...size]), content]);
}
const sequence = (...parts: readonly Uint8Array[]) => der(0x30, ...parts);
const text = (tag: number, value: string) => der(tag, Buffer.from(value, 'latin1'));
const oid = (hex: string) => der(0x06, Buffer.from(hex, 'hex'));

const ECDSA_WITH_SHA256 = sequence(oid('2a8648ce3d040302'));
const COMMON_NAME = oid('550403');
const SUBJECT_ALT_NAME = oid('551d11');

/** A key and a certificate that it has signed itself (RFC 5280, 4.1), both as PEM. */
export function certificateFor(hosts: readonly string[]): { readonly key: string; readonly cert: string } {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const name = sequence(der(0x31, sequence(COMMON_NAME, text(0x0c, 'test'))));
  const alternatives = sequence(...hosts.map((host) => text(0x82, host)));
  const body = sequence(
    der(0xa0, der(0x02, Buffer.from([2]))),
    der(0x02, Buffer.from([1])),
    ECDSA_WITH_SHA256,
    name,
    sequence(text(0x17, '000101000000Z'), text(0x18, '20990101000000Z')),
    name,
    publicKey.export({ type: 'spki', format: 'der' }),
    der(0xa3, sequence(sequence(SUBJECT_ALT_NAME, der(0x04, alternatives)))),
  );
  const signature = der(0x03, Buffer.from([0]), sign('sha256', body, privateKey));
  const base64 = sequence(body, ECDSA_WITH_SHA256, signature).toString('base64');
  const lines = base64.match(/.{1,64}/g)!.join('\n');
  return {
    key: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    cert: `-----BEGIN CERTIFICATE-----\n${lines}\n-----END CERTIFICATE-----\n`,
  };
}
