import { inflateSync } from 'node:zlib';

/** What one sheet of paper carries. */
export interface PrintedPage {
  readonly texts: readonly PrintedText[];
}

/** A run of letters in one size. */
export interface PrintedText {
  readonly text: string;
  /** Size of the font on paper, whatever the drawing around it was scaled by [pt]. */
  readonly sizePt: number;
}

/** a, b, c, d of a transformation; where it moves to does not matter here. */
type Matrix = readonly [number, number, number, number];
type Objects = ReadonlyMap<string, { readonly dictionary: string; readonly stream: string }>;

/**
 * The pages of a PDF as Chromium writes it, with every text on them.
 *
 * Source: ISO 32000-1 (2008): 7.3.8 (streams), 8.3.4 (transformations), 8.10 (forms), 9.3 and 9.4 (text), 9.10.3 (ToUnicode).
 */
export function pagesOf(pdf: Buffer): readonly PrintedPage[] {
  const objects = objectsOf(pdf.toString('latin1'));
  const pages = [...objects.values()].filter(({ dictionary }) => /\/Type \/Page\b(?!s)/.test(dictionary));
  return pages.map(({ dictionary }) => {
    const contents = objects.get(/\/Contents (\d+) 0 R/.exec(dictionary)?.[1] ?? '')?.stream ?? '';
    return { texts: textsOf(contents, dictionary, objects, [1, 0, 0, 1]) };
  });
}

function objectsOf(file: string): Objects {
  const found = [...file.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)];
  return new Map(
    found.map(([, id = '', body = '']) => {
      const [dictionary = '', packed = null] = body.split(/stream\r?\n([\s\S]*)\r?\nendstream/);
      const stream = packed === null ? '' : /FlateDecode/.test(dictionary) ? unpacked(packed) : packed;
      return [id, { dictionary, stream }];
    }),
  );
}

const unpacked = (packed: string): string => inflateSync(Buffer.from(packed, 'latin1')).toString('latin1');

const OPERATION =
  /(?<matrix>(?:[-\d.]+ ){6})(?<set>cm|Tm)\b|\/(?<font>\w+) (?<size>[-\d.]+) Tf\b|\/(?<form>\w+) Do\b|<(?<codes>[0-9A-Fa-f]+)> Tj\b|(?<=^|\s)(?<state>q|Q|BT)(?=\s|$)/g;

/** Follows the drawing of one stream; forms that it draws are followed within it. */
function textsOf(stream: string, resources: string, objects: Objects, start: Matrix): readonly PrintedText[] {
  const texts: PrintedText[] = [];
  const kept: Matrix[] = [];
  let [now, line, font, size, isRun]: [Matrix, Matrix, string, number, boolean] = [start, [1, 0, 0, 1], '', 0, false];
  const objectOf = (name: string) => objects.get(new RegExp(`/${name} (\\d+) 0 R`).exec(resources)?.[1] ?? '');
  for (const { groups = {} } of stream.matchAll(OPERATION)) {
    const given = (groups.matrix ?? '').trim().split(' ').map(Number).slice(0, 4) as unknown as Matrix;
    if (groups.set === 'cm') now = times(given, now);
    else if (groups.set === 'Tm') line = given;
    else if (groups.state === 'q') kept.push(now);
    else if (groups.state === 'Q') now = kept.pop() ?? start;
    else if (groups.state === 'BT') [line, isRun] = [[1, 0, 0, 1], false];
    else if (groups.font !== undefined) [font, size] = [groups.font, Number(groups.size)];
    else if (groups.form !== undefined) {
      const form = objectOf(groups.form);
      if (form && /\/Subtype \/Form/.test(form.dictionary)) {
        texts.push(...textsOf(form.stream, form.dictionary, objects, now));
      }
    } else if (groups.codes !== undefined) {
      const [a, b, c, d] = times(line, now);
      const sizePt = Math.round(size * Math.sqrt(Math.abs(a * d - b * c)) * 100) / 100;
      const text = lettersOf(groups.codes, objectOf(font)?.dictionary ?? '', objects);
      // Letters are set one by one where they are kerned.
      const before = isRun ? texts.pop() : undefined;
      if (before && before.sizePt !== sizePt) texts.push(before);
      texts.push({ text: before?.sizePt === sizePt ? before.text + text : text, sizePt });
      isRun = true;
    }
  }
  return texts;
}

const times = ([a, b, c, d]: Matrix, [e, f, g, h]: Matrix): Matrix => [
  a * e + b * g,
  a * f + b * h,
  c * e + d * g,
  c * f + d * h,
];

/** The letters of a font's codes, of four digits each. */
function lettersOf(codes: string, font: string, objects: Objects): string {
  const table = objects.get(/\/ToUnicode (\d+) 0 R/.exec(font)?.[1] ?? '')?.stream ?? '';
  const letters = new Map<number, string>();
  for (const [, from = '', to = '', as = ''] of table.matchAll(/^<(\w{4})> (?:<(\w{4})> )?<(\w{4,8})>$/gm)) {
    const [first, last, letter] = [from, to || from, as].map((one) => Number.parseInt(one, 16)) as [
      number,
      number,
      number,
    ];
    for (let code = first; code <= last && as.length === 4; code++) {
      letters.set(code, String.fromCharCode(letter + code - first));
    }
  }
  return (codes.match(/.{4}/g) ?? []).map((code) => letters.get(Number.parseInt(code, 16)) ?? '?').join('');
}

/** Texts on paper below a size, each once; what is told of them is enough to find them. */
export function smallerThan(leastPt: number, pages: readonly PrintedPage[]): string[] {
  const small = pages.flatMap(({ texts }, index) =>
    texts
      // A hundredth of a point is the rounding of the printer, not a choice of the sheet.
      .filter(({ text, sizePt }) => text.trim() !== '' && sizePt < leastPt - 0.02)
      .map(({ text, sizePt }) => `page ${index + 1}: ${sizePt} pt "${text}"`),
  );
  return [...new Set(small)];
}
