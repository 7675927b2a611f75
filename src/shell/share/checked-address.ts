import { type Problem, problem } from '../../base/problem.ts';

/** Ports below this are other services' than the web's, but for its own. */
const FIRST_FREE_PORT = 1024;

/**
 * An address that a program may be fetched from, in the one form that it is asked for and kept by: https (webcal counts as
 * it), no name or password in it, port 443 or one from 1024 on, nothing behind `#`. Where it leads to is checked when it is
 * connected to.
 */
export function checkedAddress(written: string, from?: URL): URL | Problem {
  const refuse = (because: string) => problem('program-address', { found: written, because }, null);
  const url = parse(written.replace(/^webcal:/i, 'https:'), from);
  if (url === null) return refuse('it is no address');
  if (url.protocol !== 'https:') return refuse(`it does not begin with https: but with ${url.protocol}`);
  if (url.username !== '' || url.password !== '') return refuse('it holds a name or a password');
  if (url.port !== '' && Number(url.port) < FIRST_FREE_PORT) return refuse(`port ${url.port} is not one of the web`);
  url.hostname = url.hostname.replace(/\.$/, '');
  url.hash = '';
  return url;
}

function parse(written: string, from: URL | undefined): URL | null {
  try {
    return new URL(written, from);
  } catch {
    return null;
  }
}
