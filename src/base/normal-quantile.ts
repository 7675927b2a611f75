const STEPS = 400;

/** Area under the standard normal curve from 0 to z, by Simpson's rule; off by less than 1e-9 up to z = 6. */
function areaTo(z: number): number {
  const density = (x: number) => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
  const h = z / STEPS;
  let sum = density(0) + density(z);
  for (let i = 1; i < STEPS; i++) sum += (i % 2 === 0 ? 2 : 4) * density(i * h);
  return (sum * h) / 3;
}

/**
 * The value that a share of a standard normal distribution lies below.
 *
 * @param share 0 to 1, exclusive; found to 1e-9 between -6 and 6 standard deviations.
 * @example normalQuantile(0.975) //=> 1.95996
 */
export function normalQuantile(share: number): number {
  if (share < 0.5) return -normalQuantile(1 - share);
  let [low, high] = [0, 6];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (0.5 + areaTo(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
