import type { SwathBasis } from '../model/spreader.ts';

/** The English words of the ways with a spreader. */
export const passWords = {
  swathFrom: {
    file: 'lawn file',
    pans: 'by its pan test',
    usual: 'usual for its kind: measure yours',
  } satisfies Record<SwathBasis, string>,
  noStep: 'No step of this plan is waiting for a spreader; the ways over the areas alone.',
  noDial: 'The lawn file does not tell of the dial. Begin about a third open, low on purpose (common practice).',
  setting: (setting: number, to: number, areas: string | null) =>
    `First setting${areas === null ? '' : ` for ${areas}`}: ${setting} on a dial to ${to}. It is low on purpose, about a third of the dial (common practice): what is left over can still be put down.`,
  tryIt: (length: string, area: string, delivers: string, least: string, most: string, second: boolean) =>
    `Try it: a pass of ${length} covers ${area} and should put down ${delivers}; between ${least} and ${most} is near enough. On the lawn it counts as part of the ${second ? 'second' : 'first'} half.`,
  course: (length: string, area: string) => `To try a setting: a pass of ${length} covers ${area}.`,
  edge: (half: string) =>
    `Round the edge first, the wheels ${half} (half a pass) inside it: the dot is where to begin, the broken line the way.`,
  edgeOfDrop: (half: string) =>
    `Round the edge first, one wheel along it, so that the middle of the spreader is ${half} (half a pass) inside: the dot is where to begin, the broken line the way of the middle.`,
  lines: (swath: string) =>
    `Then the lines, ${swath} apart or less: the edge of the pattern falls on the wheel tracks beside it.`,
  bothPasses: 'each of the two passes puts down half',
  secondPass: 'the first pass is down, the second puts down what is left',
  somePasses: (areas: string) => `each pass, on ${areas} the second alone`,
  firstDown: (areas: string) => `The first pass is down on ${areas}: all of the load goes the second way.`,
  halves: 'Half of the load first over all of an area, then the other half the second way.',
  shut: 'Walk at one pace; open the spreader after you start, shut it before you stop or turn.',
  wind: (speed: string) => `Not in wind above ${speed}: a spinner throws fine granules far.`,
  pesticide:
    'What is left after the second way goes back into its package: no third pass, and never more than the label says.',
  overlap: (areas: string) =>
    `Where lines lie closer than a full swath the load ends sooner than on the course: ${areas}.`,
  overlapOf: (area: string, percent: number) => `${area} by ${percent} %`,
  square: (areas: string) => `${areas}: known by size alone, drawn and walked as a square.`,
  parts: (areas: string) => `${areas}: what is taken off has no place in the drawing; shut the spreader there.`,
  missed: (areas: string) => `In corners and narrow places lies outside the passes: ${areas}; reach it by hand.`,
  missedOf: (area: string, missed: string) => `${area} about ${missed}`,
} as const;
