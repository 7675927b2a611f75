import qrcode from 'qrcode-generator';
import { Html, html } from '../html.ts';

/** The quiet zone that a reader needs around the code, in modules. Source: ISO/IEC 18004:2015, 6.3.8. */
const QUIET = 4;

/**
 * A text as a QR code, drawn as one path: dark on a white ground in any colour scheme, since not every reader takes it inverted.
 *
 * @param title What it holds, for those who cannot see it.
 */
export function qrCode(text: string, title: string): Html {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const size = code.getModuleCount();
  const rows = Array.from({ length: size }, (_, y) => rowPath(size, y, (x) => code.isDark(y, x)));
  const whole = size + 2 * QUIET;
  return html`<svg class="qr" role="img" aria-label="${title}" viewBox="0 0 ${whole} ${whole}" width="${4 * whole}" height="${4 * whole}" shape-rendering="crispEdges"><rect width="${whole}" height="${whole}" fill="#fff"/><path fill="#000" d="${new Html(rows.join(''))}"/></svg>`;
}

/** The dark runs of a row, a rectangle each. */
function rowPath(size: number, y: number, isDark: (x: number) => boolean): string {
  let path = '';
  for (let x = 0; x < size; x++) {
    const from = x;
    while (x < size && isDark(x)) x++;
    if (x > from) path += `M${from + QUIET} ${y + QUIET}h${x - from}v1h-${x - from}z`;
  }
  return path;
}
