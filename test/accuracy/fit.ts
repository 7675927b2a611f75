/** Fits the soil model's parameters to stations: Nelder & Mead (1965), Computer Journal 7:308-313, restarted until it rests. */
import { BY_CLIMATE, type SoilParameters } from '../../src/climate/soil-parameters.ts';
import { type Prepared, rmseBy } from './prepared.ts';

/** What is fitted: the same round guess for every fit, the first step, and the bounds. */
const FITTED = [
  { name: 'c0', guess: 0, step: 0.4, low: -5, high: 5 },
  { name: 'w', guess: 0.1, step: 0.05, low: -0.2, high: 0.5 },
  { name: 'cR', guess: 1.5, step: 0.2, low: 0, high: 5 },
  { name: 'aV', guess: 0.3, step: 0.1, low: 0, high: 2 },
  { name: 'aP', guess: 0.4, step: 0.1, low: 0, high: 1 },
  { name: 'D', guess: 0.03, step: 0.006, low: 0.005, high: 0.2 },
  { name: 'h', guess: 0.12, step: 0.02, low: 0.02, high: 1 },
  { name: 'kf', guess: 0.4, step: 0.15, low: 0, high: 1 },
  { name: 'wetDay', guess: 0.8, step: 0.1, low: 0.3, high: 1 },
  { name: 'maritime', guess: 0.3, step: 0.15, low: -1, high: 1 },
  { name: 'snowCold', guess: 0.6, step: 0.2, low: 0, high: 1 },
  { name: 'snowWarm', guess: 0.6, step: 0.2, low: 0, high: 1 },
] as const satisfies readonly { name: keyof SoilParameters; [more: string]: unknown }[];

type Point = readonly number[];
interface Vertex {
  readonly x: Point;
  readonly value: number;
}

/** Least value of a function near a start. @returns The best vertex after so many rounds, or when all vertices agree. */
export function nelderMead(f: (x: Point) => number, start: Point, steps: Point, rounds: number, agree = 1e-5): Vertex {
  const vertex = (x: Point): Vertex => ({ x, value: f(x) });
  const n = start.length;
  let simplex = [start, ...start.map((_, i) => start.map((v, j) => (i === j ? v + (steps[j] as number) : v)))].map(
    vertex,
  );
  for (let round = 0; ; round++) {
    simplex.sort((a, b) => a.value - b.value);
    const [best, second, worst] = [simplex[0], simplex[n - 1], simplex[n]] as [Vertex, Vertex, Vertex];
    if (round === rounds || worst.value - best.value < agree) return best;
    const centre = start.map((_, j) => simplex.slice(0, n).reduce((sum, { x }) => sum + (x[j] as number), 0) / n);
    const along = (t: number) => vertex(centre.map((c, j) => c + t * ((worst.x[j] as number) - c)));
    const reflected = along(-1);
    if (reflected.value < best.value) {
      const expanded = along(-2);
      simplex[n] = expanded.value < reflected.value ? expanded : reflected;
    } else if (reflected.value < second.value) simplex[n] = reflected;
    else {
      const contracted = along(reflected.value < worst.value ? -0.5 : 0.5);
      if (contracted.value < Math.min(reflected.value, worst.value)) simplex[n] = contracted;
      else
        simplex = simplex.map((one) =>
          one === best ? one : vertex(one.x.map((v, j) => (v + (best.x[j] as number)) / 2)),
        );
    }
  }
}

const parametersAt = (x: Point): SoilParameters => ({
  ...BY_CLIMATE,
  ...Object.fromEntries(FITTED.map(({ name }, i) => [name, x[i]])),
});

export interface Fit {
  readonly parameters: SoilParameters;
  /** Weighted mean RMSE of the stations fitted to [°C]. */
  readonly rmse: number;
}

const RESTARTS = 3;
const ROUNDS = 160;

/** Mean over stations of their RMSE at 5 and 10 cm, each station by its weight. */
export function costOf(p: SoilParameters, stations: readonly Prepared[]): number {
  let [sum, weights] = [0, 0];
  for (const prepared of stations) {
    sum += prepared.station.weight * rmseBy(p, prepared);
    weights += prepared.station.weight;
  }
  return sum / weights;
}

/** Parameters with the least cost. R0, V0 and A0 stay as published: c0, w and cR trade against them. */
export function fitTo(stations: readonly Prepared[]): Fit {
  const cost = (x: Point): number =>
    FITTED.some(({ low, high }, i) => (x[i] as number) < low || (x[i] as number) > high)
      ? Number.POSITIVE_INFINITY
      : costOf(parametersAt(x), stations);
  let best: Vertex = { x: FITTED.map(({ guess }) => guess), value: Number.POSITIVE_INFINITY };
  for (let i = 0; i < RESTARTS; i++) {
    const steps = FITTED.map(({ step }) => step / 2 ** i);
    best = nelderMead(cost, best.x, steps, ROUNDS);
  }
  return { parameters: parametersAt(best.x), rmse: best.value };
}
