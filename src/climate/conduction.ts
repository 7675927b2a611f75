import type { Celsius, Metres } from '../base/units.ts';

/** Temperatures of the five soil nodes [°C]. */
export type Column = readonly [Celsius, Celsius, Celsius, Celsius, Celsius];

/** Depths of the nodes [m]. */
export const NODES: readonly [Metres, Metres, Metres, Metres, Metres] = [0.05, 0.1, 0.25, 0.75, 2];

/** Fitted together with the surface parameters; see `surface.ts`. */
const GROUND = {
  /** Thermal diffusivity [m² d⁻¹] (0.39e-6 m² s⁻¹, normal moist soil). */
  D: 0.034,
  /** Resistance of canopy and thatch as a conductance [m d⁻¹] (times 2.2 MJ m⁻³ K⁻¹: 3.2 W m⁻² K⁻¹). */
  h: 0.126,
  /** Damping below 0 °C: snow and freezing, lumped [-]. */
  kf: 0.18,
} as const;

/** Thickness of the layer that each node stands for [m]. */
const LAYERS = [0.075, 0.1, 0.325, 0.875, 1.25] as const;
const SIZE = NODES.length;
const node = (values: readonly number[], i: number): number => values[i] as number;

/** Conductance between a node and the one below [m d⁻¹]; none below the last. */
const CONDUCTANCE = NODES.map((z, i) => (i < SIZE - 1 ? GROUND.D / (node(NODES, i + 1) - z) : 0));

/** The implicit matrix is the same every day, so its elimination is done once. */
const { ratio: RATIO, pivot: PIVOT } = eliminate();

function eliminate() {
  const ratio: number[] = [];
  const pivot: number[] = [];
  for (let i = 0; i < SIZE; i++) {
    const above = i === 0 ? 0 : node(CONDUCTANCE, i - 1);
    const diagonal = node(LAYERS, i) + above + node(CONDUCTANCE, i) + (i === 0 ? GROUND.h : 0);
    pivot.push(diagonal - (i === 0 ? 0 : above * node(ratio, i - 1)));
    ratio.push(node(CONDUCTANCE, i) / node(pivot, i));
  }
  return { ratio, pivot };
}

/**
 * The soil column one day on: conduction between five nodes, driven from above, no flux below; backward Euler.
 *
 * @param surface Temperature that drives the ground [°C].
 */
export function conduct(column: Column, surface: Celsius): Column {
  const next: number[] = [];
  for (let i = 0; i < SIZE; i++) {
    const fromAbove = i === 0 ? GROUND.h * surface : node(CONDUCTANCE, i - 1) * node(next, i - 1);
    next.push((node(LAYERS, i) * node(column, i) + fromAbove) / node(PIVOT, i));
  }
  for (let i = SIZE - 2; i >= 0; i--) next[i] = node(next, i) + node(RATIO, i) * node(next, i + 1);
  return next as unknown as Column;
}

/** A column at one temperature. */
export const uniform = (t: Celsius): Column => [t, t, t, t, t];

/** Soil below freezing is damped. */
const damped = (t: Celsius): Celsius => (t < 0 ? GROUND.kf * t : t);

/**
 * Soil temperature at a depth: the node's, or linear between the two nodes around it.
 *
 * @param depth 0.05 to 0.5 m.
 * @throws RangeError outside that.
 */
export function temperatureAt(column: Column, depth: Metres): Celsius {
  if (!(depth >= 0.05 - 1e-9 && depth <= 0.5 + 1e-9))
    throw new RangeError(`soil depth ${depth} m is outside 0.05 to 0.5 m`);
  const below = Math.max(
    1,
    NODES.findIndex((z) => z >= depth - 1e-9),
  );
  const [z1, z2] = [node(NODES, below - 1), node(NODES, below)];
  const share = Math.min(1, Math.max(0, (depth - z1) / (z2 - z1)));
  return damped(node(column, below - 1) * (1 - share) + node(column, below) * share);
}
