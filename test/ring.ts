/** A thousandth of a degree each way, in longitude and latitude, closed. */
export const ring = [
  [5, 52],
  [5.001, 52],
  [5.001, 52.001],
  [5, 52.001],
  [5, 52],
];
