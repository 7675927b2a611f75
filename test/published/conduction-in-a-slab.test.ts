/**
 * The model's own conduction scheme under a sinusoidal year, against the exact solution for what it stands for: a slab
 * without flux through its bottom, whose wave falls off from z0 to z as cosh(k (H - z)) / cosh(k (H - z0)), k = (1 + i)/d.
 * Source: Carslaw & Jaeger (1959), Conduction of Heat in Solids, periodic surface temperature of a slab (from memory);
 * damping depth d as in Hillel (1982). D is the model's 0.034 m²/d, H the 2.625 m of its five layers (derived).
 *
 * Tolerances: 0.02 of the amplitude and 1.2 days. Five nodes are coarse: a layer of 0.875 or 1.25 m has one temperature,
 * and backward Euler of a day damps a little. The half-space formula (e^(-z/d), lag z/d) is met in the upper 25 cm only,
 * and there for the amplitude only: the closed bottom slows the wave from below.
 */
import { describe, expect, test } from 'vitest';
import { type Column, conduction, NODES, temperaturesAt, uniform } from '../../src/climate/conduction.ts';
import { BY_CLIMATE } from '../../src/climate/soil-parameters.ts';
import { dampingDepth } from '../../src/index.ts';

const YEAR = 365;
const OMEGA = (2 * Math.PI) / YEAR;
const DIFFUSIVITY = 0.034;
const THICKNESS = 2.625;
const d = dampingDepth(DIFFUSIVITY, YEAR);
/** Surface: mean 12 °C, amplitude 10 K; the soil then never freezes, where the model would damp it. */
const conduct = conduction(BY_CLIMATE.D, BY_CLIMATE.h);
const MEAN = 12;
const AMPLITUDE = 10;

/** The last of eight years. */
const lastYear: Column[] = [];
const column = uniform(5);
for (let day = 0; day < 8 * YEAR; day++) {
  conduct(column, MEAN + AMPLITUDE * Math.sin(OMEGA * day));
  if (day >= 7 * YEAR) lastYear.push(column.slice());
}

/** Mean, amplitude and lag behind the surface [d] of the year's wave. */
function waveOf(temperature: (column: Column) => number) {
  let [mean, sine, cosine] = [0, 0, 0];
  for (const [day, state] of lastYear.entries()) {
    const t = temperature(state);
    mean += t / YEAR;
    sine += (2 * t * Math.sin(OMEGA * day)) / YEAR;
    cosine += (2 * t * Math.cos(OMEGA * day)) / YEAR;
  }
  return { mean, amplitude: Math.hypot(sine, cosine), lag: -Math.atan2(cosine, sine) / OMEGA };
}

/** Size and angle of cosh((1 + i) x). */
const cosh = (x: number) => {
  const [re, im] = [Math.cosh(x) * Math.cos(x), Math.sinh(x) * Math.sin(x)];
  return { size: Math.hypot(re, im), angle: Math.atan2(im, re) };
};

const nodes = NODES.map((depth, i) => ({ depth, ...waveOf((state) => state[i] as number) }));
const [top, ...below] = nodes as [(typeof nodes)[0], ...typeof nodes];

describe('at the nodes', () => {
  test.each(nodes)('the mean of the surface is kept at $depth m', ({ mean }) => {
    expect(mean).toBeCloseTo(MEAN, 6);
  });
  test('the top node swings less than the surface, and later', () => {
    expect(top.amplitude).toBeLessThan(AMPLITUDE);
    expect(top.lag).toBeGreaterThan(0);
  });
  test.each(below.map((node, i) => ({ ...node, above: nodes[i] as (typeof nodes)[0] })))(
    'the amplitude is smaller and the lag longer at $depth m than above',
    ({ amplitude, lag, above }) => {
      expect(amplitude).toBeLessThan(above.amplitude);
      expect(lag).toBeGreaterThan(above.lag);
    },
  );
  test.each(below)('the amplitude at $depth m is that of the slab', ({ depth, amplitude }) => {
    const exact = cosh((THICKNESS - depth) / d).size / cosh((THICKNESS - top.depth) / d).size;
    expect(Math.abs(amplitude / top.amplitude - exact)).toBeLessThan(0.02);
  });
  test.each(below)('the lag at $depth m is that of the slab', ({ depth, lag }) => {
    const exact = (cosh((THICKNESS - top.depth) / d).angle - cosh((THICKNESS - depth) / d).angle) / OMEGA;
    expect(Math.abs(lag - top.lag - exact)).toBeLessThan(1.2);
  });
  test.each(below.slice(0, 2))('the amplitude at $depth m is also that of a half-space', ({ depth, amplitude }) => {
    expect(Math.abs(amplitude / top.amplitude - Math.exp(-(depth - top.depth) / d))).toBeLessThan(0.02);
  });
});

test('between the nodes the amplitude falls and the lag grows, too', () => {
  const waves = [0.05, 0.075, 0.1, 0.15, 0.2, 0.25, 0.35, 0.5].map((depth) =>
    waveOf((state) => temperaturesAt(state, depth, BY_CLIMATE.kf)[0] as number),
  );
  for (const [i, wave] of waves.slice(1).entries()) {
    expect(wave.amplitude).toBeLessThan(waves[i]?.amplitude ?? Number.NaN);
    expect(wave.lag).toBeGreaterThan(waves[i]?.lag ?? Number.NaN);
  }
});
