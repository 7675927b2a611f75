import type { Celsius, Metres } from '../base/units.ts';

/** Temperatures of the five soil nodes [°C]. */
export type Column = Float64Array;

/** Depths of the nodes [m]. */
export const NODES: readonly [Metres, Metres, Metres, Metres, Metres] = [0.05, 0.1, 0.25, 0.75, 2];

/** Thickness of the layer that each node stands for [m]. */
const LAYERS = [0.075, 0.1, 0.325, 0.875, 1.25] as const;
const SIZE = NODES.length;
const node = (values: ArrayLike<number>, i: number): number => values[i] as number;

/** Takes a soil column one day on, in place, driven by a surface temperature [°C]. */
export type Conduct = (column: Column, surface: Celsius) => void;

/**
 * Conduction between five nodes, driven from above, no flux below; backward Euler in steps of a day.
 *
 * @param D Thermal diffusivity [m² d⁻¹]. @param h Conductance of canopy and thatch [m d⁻¹].
 * @returns The step; its matrix is the same every day, so its elimination is done once.
 */
export function conduction(D: number, h: number): Conduct {
  /** Conductance between a node and the one below [m d⁻¹]; none below the last. */
  const conductance = NODES.map((z, i) => (i < SIZE - 1 ? D / (node(NODES, i + 1) - z) : 0));
  const [ratio, pivot] = [new Float64Array(SIZE), new Float64Array(SIZE)];
  for (let i = 0; i < SIZE; i++) {
    const above = i === 0 ? 0 : node(conductance, i - 1);
    const diagonal = node(LAYERS, i) + above + node(conductance, i) + (i === 0 ? h : 0);
    pivot[i] = diagonal - (i === 0 ? 0 : above * node(ratio, i - 1));
    ratio[i] = node(conductance, i) / node(pivot, i);
  }
  return (column, surface) => {
    let carried = h * surface;
    for (let i = 0; i < SIZE; i++) {
      const now = (node(LAYERS, i) * node(column, i) + carried) / node(pivot, i);
      column[i] = now;
      carried = node(conductance, i) * now;
    }
    for (let i = SIZE - 2; i >= 0; i--) column[i] = node(column, i) + node(ratio, i) * node(column, i + 1);
  };
}

/** A column at one temperature. */
export const uniform = (t: Celsius): Column => new Float64Array(SIZE).fill(t);

/** Where a depth lies between the nodes: the node above it and the share of the one below. */
function between(depth: Metres): { readonly above: number; readonly share: number } {
  if (!(depth >= NODES[0] - 1e-9 && depth <= 0.5 + 1e-9)) {
    throw new RangeError(`soil depth ${depth} m is outside 0.05 to 0.5 m`);
  }
  const above =
    Math.max(
      1,
      NODES.findIndex((z) => z >= depth - 1e-9),
    ) - 1;
  const [z1, z2] = [node(NODES, above), node(NODES, above + 1)];
  return { above, share: Math.min(1, Math.max(0, (depth - z1) / (z2 - z1))) };
}

/**
 * Soil temperature at a depth in a run of columns: the node's, or linear between the two nodes around it.
 *
 * @param columns Five values a day. @param depth 0.05 to 0.5 m. @param kf What is left of a temperature below 0 °C [-].
 * @param shift Added to each day [°C].
 * @throws RangeError for another depth.
 */
export function temperaturesAt(columns: Float64Array, depth: Metres, kf: number, shift?: Float64Array): Float64Array {
  const { above, share } = between(depth);
  const values = new Float64Array(columns.length / SIZE);
  for (let i = 0; i < values.length; i++) {
    const between = node(columns, i * SIZE + above) * (1 - share) + node(columns, i * SIZE + above + 1) * share;
    const t = between + (shift?.[i] ?? 0);
    values[i] = t < 0 ? kf * t : t;
  }
  return values;
}
