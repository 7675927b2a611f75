import type { PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Clemson Cooperative Extension, warm-season lawn calendars: half after green-up and two mowings, half in late summer. Seen as excerpts and in a copy.',
  program: 'bermudagrass-warm-humid.yaml',
  grass: 'bermudagrass',
  place: { name: 'Columbia SC', latitude: 34.0, longitude: -81.03 },
  pH: 6,
  feeds: [
    // Green-up usually in late April or early May.
    { name: 'half after green-up', step: 'spring-feed', days: ['04-20', '05-31'], N: [0.5, 2] },
    { name: 'half in late summer', step: 'late-summer-feed', days: ['08-01', '09-10'], N: [0.5, 2] },
  ],
  other: [{ name: 'potash, four to six weeks before frost', step: 'autumn-potash', days: ['09-20', '10-15'] }],
  yearly: [1, 4],
  explained: {
    'summer-feed: not printed': 'three feeds as in Georgia, instead of two halves',
  },
};
