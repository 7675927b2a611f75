import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the programs that come along: from `src/shell` as from `out/lib/shell`, the nearest above that holds the demo. */
export const shippedFolder: string = findShipped();

function findShipped(): string {
  const here = path.dirname(fileURLToPath(import.meta.url));
  const root = ['../..', '../../..']
    .map((up) => path.join(here, up))
    .find((folder) => existsSync(path.join(folder, 'programs/demo/lawn.yaml')));
  return path.join(root ?? here, 'programs');
}
