import path from 'node:path';
import { sketchOf } from '../amounts/area-sketch.ts';
import { displayOf } from '../base/display.ts';
import { hasErrors, type Problem, problem } from '../base/problem.ts';
import { areaDrawing } from '../emit/area-drawing.ts';
import { areaReport } from '../emit/area-report.ts';
import { areaWords } from '../emit/area-words-en.ts';
import { folded } from '../emit/table.ts';
import { problemsOfAreas } from '../measures.ts';
import type { AreaSketch } from '../model/area-sketch.ts';
import type { Lawn } from '../model/lawn.ts';
import { readLawn } from '../read/lawn.ts';
import { link } from '../read/link.ts';
import { NotWritten, writeAll } from './files.ts';
import type { Io } from './io.ts';
import { lookupFrom } from './lookup.ts';
import { EXIT, exitCode, failing, printProblems } from './report-problems.ts';
import { whichLawn } from './which-lawn.ts';
import { zipLookup } from './zips.ts';

export interface AreasOptions {
  readonly out?: string;
  readonly dryRun?: boolean;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/**
 * Tells how large the areas of a lawn are and by how much they may be off, and draws each.
 *
 * One whose setback names an edge that it does not have is drawn all the same: the drawing tells the numbers.
 */
export function areasCommand(words: readonly string[], options: AreasOptions, io: Io): number {
  const fail = failing(options, io);
  const asked = whichLawn(words, undefined, io);
  if ('problems' in asked) return fail(asked.problems);
  const parsed = readLawn(asked.source.text, asked.source.name, zipLookup);
  const linked = link(parsed, lookupFrom(io.cwd), { weather: [] });
  if (!linked.value || hasErrors(linked.problems)) return fail(linked.problems);
  const { lawn } = linked.value;
  const problems = [...linked.problems, ...problemsOfAreas(linked.value, parsed)];
  const sketches = Object.entries(lawn.areas).map(([id, area]) => sketchOf(id, area));

  const writes = !options.dryRun && (options.out !== undefined || !(asked.isDemo || options.json));
  const drawn = writes ? draw(lawn, sketches, path.resolve(io.cwd, options.out ?? 'out/site')) : [];
  if ('problem' in drawn) return fail([drawn.problem]);
  const files = drawn.map((file) => path.relative(io.cwd, file));
  if (options.json) io.stdout(`${JSON.stringify(asJson(lawn, sketches, files, problems), null, 2)}\n`);
  else {
    io.stdout(areaReport(sketches, displayFor(lawn), io.columns));
    const told = files.length > 0 ? areaWords.written(files) : areaWords.notWritten;
    io.stdout(`\n${folded(told, io.columns).join('\n')}\n`);
  }
  printProblems(problems, io);
  return problems.length === 0 ? EXIT.fine : exitCode(problems, options.strict ?? false);
}

const displayFor = ({ display }: Lawn) => displayOf(display?.units ?? 'metric', display?.language ?? 'en');

/** Writes a drawing of each area; the files, or why they cannot be written. */
function draw(
  lawn: Lawn,
  sketches: readonly AreaSketch[],
  folder: string,
): readonly string[] | { readonly problem: Problem } {
  const writings = sketches.map((sketch) => ({
    file: path.join(folder, `${lawn.id}-${sketch.id}.svg`),
    text: areaDrawing(`${lawn.name ?? lawn.id}: ${sketch.id}`, sketch, displayFor(lawn)),
  }));
  try {
    writeAll(writings);
  } catch (error) {
    if (!(error instanceof NotWritten)) throw error;
    return { problem: problem('write-failed', { file: error.file, reason: error.message }, null) };
  }
  return writings.map(({ file }) => file);
}

function asJson(
  lawn: Lawn,
  sketches: readonly AreaSketch[],
  files: readonly string[],
  problems: readonly Problem[],
): unknown {
  const areas = sketches.map((sketch, i) => ({
    id: sketch.id,
    measuredAs: sketch.kind,
    areaM2: sketch.size,
    errorM2: sketch.error?.value ?? null,
    errorBasis: sketch.error?.basis ?? null,
    setbackM2: sketch.setback?.size ?? null,
    edges: sketch.sides.length,
    holes: sketch.holes.length,
    drawing: files[i] ?? null,
  }));
  return { kind: 'areas', version: 1, lawn: lawn.id, areas, problems };
}
