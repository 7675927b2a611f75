import path from 'node:path';
import { formatDay } from '../../base/day.ts';
import { folded } from '../../emit/table.ts';
import type { Io } from '../io.ts';
import type { SiteInput, SiteWritten } from './site.ts';

/** What was published, for a program that asked. */
export const jsonReport = (
  { places, linked, dryRun }: SiteInput,
  { written, removed, unchanged, ended, lawns, problems }: SiteWritten,
): string =>
  `${JSON.stringify(
    {
      kind: 'site',
      version: 1,
      publication: places.publication.id,
      asOf: formatDay(places.asOf),
      baseUrl: places.publication.baseUrl,
      dryRun,
      places: linked.jobs.length,
      ended,
      lawns: Object.entries(lawns).map(([lawn, { owner, readers, endedOn }]) => ({
        lawn,
        owner: `l/${owner}/`,
        readers: Object.fromEntries(Object.entries(readers).map(([id, token]) => [id, `l/${token}/`])),
        endedOn,
      })),
      written,
      removed,
      unchanged,
      problems,
    },
    null,
    2,
  )}\n`;

/** The same in words. Addresses of owners stand here and nowhere in the site. */
export function siteReport(
  { places, linked, out, dryRun }: SiteInput,
  { written, removed, unchanged, ended, lawns }: SiteWritten,
  io: Io,
): string {
  const { name, baseUrl } = places.publication;
  const base = baseUrl ?? '';
  const addresses = Object.entries(lawns).flatMap(([lawn, { owner, readers, endedOn }]) =>
    endedOn !== null
      ? [`  ${lawn}: ended on ${endedOn}`]
      : [
          `  ${lawn}: ${base}l/${owner}/`,
          ...Object.entries(readers).map(([id, token]) => `    for ${id}: ${base}l/${token}/calendar.ics`),
        ],
  );
  const shown = path.relative(io.cwd, out) || '.';
  const lines = [
    `${name}, as of ${formatDay(places.asOf)}: ${plural(linked.jobs.length, 'place')}, in ${shown}`,
    `${dryRun ? 'Would write' : 'Wrote'} ${plural(written.length, 'file')}, ${dryRun ? 'would remove' : 'removed'} ${removed.length}; ${unchanged} unchanged.`,
    ...(ended.length > 0 ? [`Ended, and still there for a month: ${ended.join(', ')}`] : []),
    ...(baseUrl === null
      ? [
          'No address of the site is known, so its pages have no links to subscribe by and no QR codes: give --base-url.',
        ]
      : []),
    ...(addresses.length > 0
      ? ['Addresses of lawns: give each to its owner or reader alone, and keep them to yourself.', ...addresses]
      : []),
  ];
  return `${lines.flatMap((line) => (line.startsWith('  ') ? [line] : folded(line, io.columns))).join('\n')}\n`;
}

const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
