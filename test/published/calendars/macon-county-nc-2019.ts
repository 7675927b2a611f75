import type { PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source: 'NC State Extension, Macon County (2019), cool-season lawns in western North Carolina. Seen as an excerpt.',
  program: 'tall-fescue-transition.yaml',
  grass: 'tall-fescue',
  place: { name: 'Franklin NC', latitude: 35.18, longitude: -83.38 },
  feeds: [
    // "About Valentine's Day"; none after 15 March.
    { name: "Valentine's Day", step: 'late-winter-feed', days: ['02-07', '03-15'], N: [0.5, 1.0] },
    // "About Labor Day", which is 1 to 7 September.
    { name: 'Labor Day', step: 'autumn-feed-1', days: ['08-25', '09-15'], N: 1.0 },
    // "About Thanksgiving", which is 22 to 28 November.
    { name: 'Thanksgiving', step: 'autumn-feed-2', days: ['11-15', '12-05'], N: 1.0 },
  ],
  other: [{ name: 'Pre-emergent', step: 'summer-annual-barrier', days: ['02-20', '03-15'] }],
  yearly: [2.5, 3.0],
  explained: {
    'autumn-feed-1: window':
      'the program waits until the soil is down to 75 °F; other counties of the state say mid-September',
    'autumn-feed-1: rate':
      'at most 0.9 lb at a time, so that the program stays inside the rules of Maryland and New Jersey',
    'autumn-feed-2: day': 'the program feeds early in November, since the late feed is taken up poorly',
    'autumn-feed-2: rate':
      'Nebraska and Wisconsin found that the late feed is taken up poorly: 0.7 lb of Purdue’s 0.5 to 1.0',
    'year: nitrogen': 'follows from the two smaller autumn feeds; within the 2 to 3.5 lb of Virginia',
  },
};
