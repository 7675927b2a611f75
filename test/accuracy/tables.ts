/** Text tables of at most 100 columns. */

/** A number with so many decimals, right-aligned; "-" where there is none. */
export const num = (value: number, width: number, decimals: number): string =>
  (Number.isFinite(value) ? value.toFixed(decimals) : '-').padStart(width);

/** The same with its sign. */
export const signed = (value: number, width: number, decimals: number): string => {
  const text = value.toFixed(decimals).replace(/^-(?=[0.]+$)/, '');
  return (Number.isFinite(value) ? `${Number(text) > 0 ? '+' : ''}${text}` : '-').padStart(width);
};

export const percent = (share: number, width: number): string => num(100 * share, width, 0);

/** A heading with a line under it. */
export const heading = (text: string): string => `\n${text}\n${'-'.repeat(Math.min(100, text.length))}\n`;
