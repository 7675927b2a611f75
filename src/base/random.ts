/** A stream of numbers in [0, 1) that depends on its seed alone. */
export type Random = () => number;

/**
 * The mulberry32 generator: 32 bits of state, period 2^32, enough for simulated weather and for tests.
 *
 * @param seed Any 32-bit integer.
 * @example seeded(1)() === seeded(1)() //=> true
 */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A standard normal number (Box & Muller 1958, cosine branch). */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
