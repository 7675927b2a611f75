import { realpath, stat } from 'node:fs/promises';
import path from 'node:path';

/** What a site holds, by the end of the name. Anything else in its folder is not of the site and is not given out. */
const TYPES: Readonly<Record<string, string>> = {
  '.ics': 'text/calendar; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.json': 'application/json',
  '.xml': 'application/xml',
  '.atom': 'application/atom+xml',
  '.txt': 'text/plain; charset=utf-8',
};

/** The ledger of the demo lies beside its feed; what each reader may see is not for all of them. */
const KEPT_BACK = /\.(ledger|journal|changes)\.json$/i;

/** A file of the site. */
export interface SiteFile {
  /** Its real path. */
  readonly file: string;
  readonly type: string;
}

/** The type of a file by its path under the site; null where none is given out under that name. */
export function typeOf(segments: readonly string[]): string | null {
  if (!segments.every(plain)) return null;
  const name = segments.at(-1) ?? '';
  return KEPT_BACK.test(name) ? null : (TYPES[path.extname(name).toLowerCase()] ?? null);
}

/** No step up, nothing hidden, and nothing that some system takes for more than a name. */
const plain = (segment: string): boolean =>
  segment !== '' && !segment.startsWith('.') && !/[\p{Cc}\\/:]/u.test(segment) && !/[. ]$/.test(segment);

/**
 * The file that an address asks for.
 *
 * @param root The site's folder.
 * @param target The address as it stands in the request, with its percent signs.
 * @returns null where there is no such file, or it is not of the site: outside of it, also by a link; hidden; of another type.
 *   Busy where nobody can tell just now.
 * @example await siteFile('out/site', '/my-lawn.ics?x=1')
 */
export async function siteFile(root: string, target: string): Promise<SiteFile | null | 'busy'> {
  const asked = segmentsOf(target);
  if (!asked || typeOf(asked) === null) return null;
  return unlessAbsent(async () => {
    const home = await realpath(root);
    const file = await realpath(path.join(home, ...asked));
    const under = path.relative(home, file);
    // Where a link leads has to be of the site as well, by its own name.
    const type = path.isAbsolute(under) ? null : typeOf(under.split(path.sep));
    return type !== null && (await stat(file)).isFile() ? { file, type } : null;
  });
}

/** How a system says that a file is not there: no name, no folder, a link in a circle, a name that none can have. */
const ABSENT = new Set(['ENOENT', 'ENOTDIR', 'ELOOP', 'ENAMETOOLONG']);

/**
 * What a look at a file gives; null where the file is not there. Anything else, such as too many open files, passes or is
 * mended, and must not be told as a feed that has gone, which some readers take off.
 */
export async function unlessAbsent<T>(look: () => Promise<T>): Promise<T | null | 'busy'> {
  try {
    return await look();
  } catch (error) {
    return ABSENT.has((error as NodeJS.ErrnoException).code ?? '') ? null : 'busy';
  }
}

/** The names of a path, each undone once; a folder is its index. */
function segmentsOf(target: string): readonly string[] | null {
  const [asked = ''] = target.split(/[?#]/, 1);
  if (!asked.startsWith('/')) return null;
  try {
    return `${asked.slice(1)}${asked.endsWith('/') ? 'index.html' : ''}`.split('/').map(decodeURIComponent);
  } catch {
    return null;
  }
}
