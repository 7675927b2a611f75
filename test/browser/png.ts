import { inflateSync } from 'node:zlib';

/** A picture's pixels. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Red, green and blue of the pixel in this column and row, of 255. */
  readonly at: (x: number, y: number) => readonly [number, number, number];
}

/**
 * Reads a PNG of eight bits a channel that is not interlaced, as browsers take them.
 *
 * Source: W3C (2003), Portable Network Graphics, second edition, sections 5 (chunks), 9 (filters) and 11.2.2 (IHDR).
 */
export function pixelsOf(png: Buffer): Pixels {
  const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)];
  const [depth, kind, interlaced] = [png[24], png[25], png[28]];
  if (depth !== 8 || (kind !== 2 && kind !== 6) || interlaced !== 0) throw new Error(`a PNG of kind ${kind}, ${depth}`);
  const channels = kind === 6 ? 4 : 3;
  const data: Buffer[] = [];
  for (let at = 8; at < png.length; ) {
    const length = png.readUInt32BE(at);
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT') data.push(png.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  const rows = unfiltered(inflateSync(Buffer.concat(data)), width * channels, height, channels);
  return {
    width,
    height,
    at: (x, y) => {
      const from = y * width * channels + x * channels;
      return [rows[from] ?? 0, rows[from + 1] ?? 0, rows[from + 2] ?? 0];
    },
  };
}

function unfiltered(raw: Buffer, stride: number, height: number, channels: number): Uint8Array {
  const rows = new Uint8Array(stride * height);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (stride + 1)];
    for (let x = 0; x < stride; x++) {
      const left = x >= channels ? (rows[y * stride + x - channels] ?? 0) : 0;
      const up = y > 0 ? (rows[(y - 1) * stride + x] ?? 0) : 0;
      const corner = y > 0 && x >= channels ? (rows[(y - 1) * stride + x - channels] ?? 0) : 0;
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter ?? 0] ?? 0;
      rows[y * stride + x] = (raw[y * (stride + 1) + 1 + x] ?? 0) + guess;
    }
  }
  return rows;
}

function paeth(left: number, up: number, corner: number): number {
  const guess = left + up - corner;
  const [byLeft, byUp, byCorner] = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)];
  if (byLeft <= byUp && byLeft <= byCorner) return left;
  return byUp <= byCorner ? up : corner;
}
