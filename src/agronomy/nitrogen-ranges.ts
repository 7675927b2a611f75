import type { Grass } from '../model/grass.ts';

/** A published range of yearly nitrogen [lb/1000 ft²], with who printed it. */
export interface NitrogenRange {
  readonly from: number;
  readonly to: number;
  readonly source: string;
}

/**
 * Yearly nitrogen by grass, as extension services print it. They disagree, by region and by decade: all of them stand here,
 * and a program is outside only where it is outside every one. Florida's figures are those of its interim table of the
 * 2000s (North, Center, South). Texas: T, older; t, later.
 */
export const NITROGEN: Readonly<Record<Grass, readonly NitrogenRange[]>> = {
  'kentucky-bluegrass': [
    { from: 1, to: 4, source: 'University of Illinois (1995), in a copy' },
    { from: 2, to: 3.5, source: 'Virginia DCR, lawn fertilizer calculator' },
  ],
  'perennial-ryegrass': [
    { from: 2, to: 4, source: 'University of Illinois (1995), in a copy' },
    { from: 2, to: 3.5, source: 'Virginia DCR' },
  ],
  'tall-fescue': [
    { from: 2, to: 3.5, source: 'Virginia DCR' },
    { from: 2, to: 4, source: 'University of Illinois (1995), in a copy' },
  ],
  'fine-fescue': [
    { from: 1, to: 2, source: 'Virginia DCR' },
    { from: 1, to: 3, source: 'University of Illinois (1995), in a copy' },
  ],
  bermudagrass: [
    { from: 2, to: 4, source: 'Virginia DCR' },
    { from: 2, to: 4, source: 'Kansas State University, in a copy' },
    { from: 4, to: 6, source: 'Texas A&M, common bermudagrass (T)' },
    { from: 5, to: 7, source: 'UF/IFAS, Florida yards guide, South' },
  ],
  zoysiagrass: [
    { from: 1, to: 2, source: 'Virginia DCR' },
    { from: 1.5, to: 2, source: 'Kansas State University, in a copy' },
    { from: 2, to: 3, source: 'University of Georgia, in a copy' },
    { from: 4, to: 6, source: 'UF/IFAS, Florida yards guide, South' },
  ],
  'st-augustinegrass': [
    { from: 2, to: 4, source: 'Virginia DCR' },
    { from: 2, to: 5, source: 'Texas A&M (T)' },
    { from: 1, to: 2, source: 'Texas AgriLife, in shade (t)' },
    { from: 4, to: 6, source: 'UF/IFAS, Florida yards guide, South' },
  ],
  centipedegrass: [
    { from: 1, to: 2, source: 'Virginia DCR' },
    { from: 0.5, to: 2, source: 'Clemson University, in a copy' },
    { from: 2, to: 3, source: 'UF/IFAS, Florida yards guide, Center and South' },
  ],
  bahiagrass: [
    { from: 2, to: 3, source: 'UF/IFAS, Florida yards guide, North' },
    { from: 2, to: 4, source: 'UF/IFAS, Florida yards guide, Center and South' },
  ],
  buffalograss: [
    { from: 0, to: 1, source: 'Kansas State University, in a copy: never above 2' },
    { from: 1, to: 2, source: 'Texas AgriLife, in a copy (t)' },
    { from: 1, to: 3, source: 'University of Illinois (1995), in a copy' },
  ],
};

/** The least and the most that anybody prints for a grass, each with who. */
export function widest(grass: Grass): { readonly least: NitrogenRange; readonly most: NitrogenRange } {
  const ranges = NITROGEN[grass];
  const [first] = ranges as readonly [NitrogenRange, ...NitrogenRange[]];
  return {
    least: ranges.reduce((a, b) => (b.from < a.from ? b : a), first),
    most: ranges.reduce((a, b) => (b.to > a.to ? b : a), first),
  };
}
