import type { PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'University of California IPM, guide to healthy lawns: when to fertilize warm-season lawns. Seen as an excerpt.',
  program: 'bermudagrass-warm-humid.yaml',
  grass: 'bermudagrass',
  place: { name: 'Fresno CA', latitude: 36.74, longitude: -119.79 },
  facts: { irrigated: true },
  feeds: [
    { name: 'about Easter', step: 'spring-feed', days: ['03-22', '04-25'], N: [0.5, 1] },
    { name: 'Fourth of July', step: 'summer-feed', days: ['06-27', '07-11'], N: [0.5, 1] },
    { name: 'Labor Day', step: 'late-summer-feed', days: ['09-01', '09-07'], N: [0.5, 1] },
    { name: '31 October', step: null, days: ['10-24', '11-07'], N: [0.5, 1] },
  ],
  yearly: [4, 6],
  explained: {
    'spring-feed: day':
      'the program waits for 65 °F at 4 in, which the publication does not ask for, and leaves room for late springs',
    'summer-feed: day': 'three feeds six weeks apart instead of four about eight weeks apart',
    'late-summer-feed: window':
      'none after the middle of August: Georgia and Kansas end there, since late growth freezes',
    '31 October: not in the program': 'no nitrogen onto grass that is about to sleep',
    'year: nitrogen': 'Georgia’s and Virginia’s 2 to 4 lb; the publication has 4 to 6 for every grass of the state',
  },
};
