/** Whether a grass grows best in cool weather (C3: fescues, bluegrass, ryegrass) or in warm (C4: bermuda, zoysia). */
export const GRASS_SEASONS = ['cool', 'warm'] as const;
export type GrassSeason = (typeof GRASS_SEASONS)[number];

/** The grasses of lawns, each with the weather it grows best in. */
const SEASON_OF = {
  'kentucky-bluegrass': 'cool',
  'perennial-ryegrass': 'cool',
  'tall-fescue': 'cool',
  'fine-fescue': 'cool',
  bermudagrass: 'warm',
  zoysiagrass: 'warm',
  'st-augustinegrass': 'warm',
  centipedegrass: 'warm',
  bahiagrass: 'warm',
  buffalograss: 'warm',
} as const satisfies Record<string, GrassSeason>;

export type Grass = keyof typeof SEASON_OF;
export const GRASSES = Object.keys(SEASON_OF) as readonly Grass[];

export const seasonOfGrass = (grass: Grass): GrassSeason => SEASON_OF[grass];
