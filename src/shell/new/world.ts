import { readdirSync } from 'node:fs';
import path from 'node:path';
import { netArea } from '../../amounts/area.ts';
import { hasErrors, type Problem, problem } from '../../base/problem.ts';
import { parseQuantity } from '../../base/quantity.ts';
import { climateClasses } from '../../climate/climate-class.ts';
import { nearestPlace } from '../../climate/nearest-place.ts';
import type { Draft } from '../../model/draft.ts';
import { isAddress } from '../../model/program-ref.ts';
import type { ProgramAtHand, World } from '../../read/answers/question.ts';
import { kindOf } from '../../read/any.ts';
import { type Source, unfound } from '../../read/lookup.ts';
import { readProgram } from '../../read/program.ts';
import { readWeather } from '../../read/weather.ts';
import { readText } from '../files.ts';
import { lookupFrom, readNamed } from '../lookup.ts';
import { shippedFolder } from '../shipped.ts';
import { zipLookup } from '../zips.ts';

/** More steps up than these, and a path is written from the root: it then outlives a move of the lawn file no worse. */
const MOST_STEPS_UP = 3;

/** The path by which a file names another one; from the root where they lie far apart, or on different disks. */
export function refFrom(lawnFile: string, target: string): string {
  const relative = path.relative(path.dirname(lawnFile), target).split(path.sep).join('/');
  const up = relative.split('/').filter((part) => part === '..').length;
  return up > MOST_STEPS_UP ? target : relative;
}

/**
 * What answers are checked against, for a lawn file at this place.
 *
 * @param lawnFile Where the file will stand, from the root.
 */
export function worldFor(lawnFile: string, cwd: string): World {
  const open = (file: string): Source | readonly Problem[] => {
    const source = readText(file, cwd);
    if (source === null) return [problem('file-unreadable', { ref: file, reason: 'no such file' }, null)];
    return 'reason' in source ? [problem('file-unreadable', { ref: file, reason: source.reason }, null)] : source;
  };
  const fetched = (address: string): Source | readonly Problem[] => {
    const source = readNamed(address, cwd);
    return source === null || 'reason' in source ? [unfound(address, source, null)] : source;
  };
  const programAt = (file: string): ProgramAtHand | readonly Problem[] => {
    const source = isAddress(file) ? fetched(file) : open(file);
    if (!('text' in source)) return source;
    const { value, problems } = readProgram(source.text, source.name, lookupFrom(cwd));
    if (!value) return problems;
    return {
      id: value.id,
      name: value.name,
      grass: value.grass,
      climate: value.climate ?? [],
      ref: isAddress(file) ? file : refFrom(lawnFile, path.resolve(cwd, file)),
    };
  };
  return {
    zips: zipLookup,
    programs: shippedOf('program', cwd).flatMap((file) => {
      const found = programAt(file);
      return 'ref' in found ? [found] : [];
    }),
    climatesAt,
    programAt,
    weatherAt(file) {
      const source = open(file);
      if (!('text' in source)) return source;
      const { problems } = readWeather(source.text, source.name, 'metric');
      return hasErrors(problems) ? problems : refFrom(lawnFile, path.resolve(cwd, file));
    },
    leavesUnitsOpen(ref) {
      const source = lookupFrom(cwd)(ref, lawnFile);
      if (source === null || 'reason' in source) return false;
      return readWeather(source.text, source.name).problems.some(({ code }) => code === 'weather-units');
    },
    netArea,
  };
}

/** The files of a kind that come along, from the root, by name. */
export function shippedOf(kind: 'program' | 'products', cwd: string): readonly string[] {
  return readdirSync(shippedFolder)
    .filter((name) => name.endsWith('.yaml'))
    .toSorted()
    .map((name) => path.join(shippedFolder, name))
    .filter((file) => {
      const source = readText(file, cwd);
      return source !== null && 'text' in source && kindOf(source.text, source.name) === kind;
    });
}

/** The kinds of climate of the nearest place whose climate is known, brought to the lawn's height. */
function climatesAt({ zip, latitude, longitude, elevation }: NonNullable<Draft['location']>): readonly string[] {
  const place = zip === undefined ? { latitude: latitude ?? 0, longitude: longitude ?? 0 } : zipLookup(zip.slice(0, 5));
  if (place === null) return [];
  const height = elevation === undefined ? null : parseQuantity(elevation, 'length');
  const nearest = nearestPlace(place.latitude, place.longitude, height && 'value' in height ? height.value : null);
  return nearest.value ? climateClasses({ latitude: place.latitude, normals: nearest.value.normals }) : [];
}
