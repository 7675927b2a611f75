import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Washington State University Extension, King County, tip sheet 11, lawns: its first part, seen as an excerpt.',
  program: 'perennial-ryegrass-maritime.yaml',
  grass: 'perennial-ryegrass',
  place: { name: 'Seattle WA', latitude: 47.61, longitude: -122.33 },
  facts: { thin: true, 'clippings-returned': true },
  feeds: [{ name: 'Mid-May, if needed', step: 'late-spring-feed', days: ['05-10', '05-20'], N: [0.5, 1.0] }],
  other: [
    { name: 'Coring', step: 'aerate', days: months(9) },
    { name: 'Overseeding', step: 'overseed', days: months(9) },
  ],
  explained: {
    'late-spring-feed: day': 'best at Memorial Day, as western Washington has it; mid-May opens the window',
    'autumn-feed-1: not printed': 'the part that was seen ends with summer',
    'autumn-feed-2: not printed': 'the part that was seen ends with summer',
  },
};
