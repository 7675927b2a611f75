import { type Dirent, readdirSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import path from 'node:path';
import { typeOf } from './site-file.ts';

/** This machine alone. */
export const LOOPBACK = 'localhost';
/** Every network that the machine is in, and what kinds of addresses it has there. */
const EVERYWHERE: Readonly<Record<string, readonly string[]>> = { '0.0.0.0': ['IPv4'], '::': ['IPv4', 'IPv6'] };

/** Whether a host is reached from this machine alone. */
export const isLoopback = (host: string): boolean => host === LOOPBACK || host === '::1' || /^127\./.test(host);

/** No site is nested deeper; a whole disk that is named by mistake is not walked. */
const DEEPEST = 4;

/** The paths of the feeds in a site, in order, as they stand in an address. */
export const feedsIn = (root: string): readonly string[] =>
  namesIn(root, [])
    .filter((segments) => typeOf(segments)?.startsWith('text/calendar'))
    .map((segments) => `/${segments.map(encodeURIComponent).join('/')}`)
    .sort();

function namesIn(root: string, above: readonly string[]): readonly (readonly string[])[] {
  return entriesOf(path.join(root, ...above)).flatMap((entry) => {
    const segments = [...above, entry.name];
    if (!entry.isDirectory()) return [segments];
    return entry.name.startsWith('.') || segments.length > DEEPEST ? [] : namesIn(root, segments);
  });
}

/** A folder that may not be read shows nothing. */
function entriesOf(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    return [];
  }
}

/** The hosts by which a server is reached, as they stand in an address. */
export function hostsOf(host: string, port: number): readonly string[] {
  const families = EVERYWHERE[host];
  const names = families ? ownAddresses(families) : [host];
  return names.map((name) => `${name.includes(':') ? `[${name}]` : name}:${port}`);
}

/** The addresses of this machine in its networks; IPv6 ones of the link alone lead nowhere without a scope. */
function ownAddresses(families: readonly string[]): readonly string[] {
  const own = Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ internal, family, address }) => !internal && families.includes(family) && !address.startsWith('fe80:'))
    .map(({ address }) => address);
  return own.length > 0 ? own : [LOOPBACK];
}
