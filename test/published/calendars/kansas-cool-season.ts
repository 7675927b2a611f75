import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Kansas State University agent, cool-season lawns at the middle level: September and the last mowing in November. ruralmessenger. In a copy.',
  program: 'tall-fescue-transition.yaml',
  grass: 'tall-fescue',
  place: { name: 'Manhattan KS', latitude: 39.19, longitude: -96.6 },
  facts: { thin: true, irrigated: true },
  feeds: [
    { name: 'September', step: 'autumn-feed-1', days: months(9), N: 1 },
    { name: 'November', step: 'autumn-feed-2', days: months(11), N: 1 },
  ],
  other: [
    { name: 'Pre-emergent, redbud in bloom', step: 'summer-annual-barrier', days: months(4) },
    { name: 'Seeding', step: 'overseed', days: ['08-25', '10-10'] },
    { name: 'Coring', step: 'aerate', days: months(9) },
  ],
  yearly: 2,
  explained: {
    'aerate: day': 'just before seeding, which is best about Labor Day',
    'autumn-feed-1: rate':
      'at most 0.9 lb at a time, so that the program stays inside the rules of Maryland and New Jersey',
    'autumn-feed-2: rate':
      'Nebraska and Wisconsin found that the late feed is taken up poorly: 0.7 lb of Purdue’s 0.5 to 1.0',
    'late-winter-feed: not printed': 'North Carolina’s; Kansas waits for May and feeds then only at its high level',
    'year: nitrogen': '0.5 lb more in February, 0.4 less in autumn',
  },
};
