import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source: 'Colorado State University Extension, 7.202, lawn fertilizing, by way of countylinelumberco.com. In a copy.',
  program: 'cool-season-arid.yaml',
  grass: 'kentucky-bluegrass',
  place: { name: 'Denver CO', latitude: 39.74, longitude: -104.99 },
  facts: { irrigated: true },
  feeds: [
    { name: 'March and April', step: null, days: months(3, 4), N: [0.5, 1] },
    { name: 'May and June', step: 'late-spring-feed', days: months(5, 6), N: 1 },
    // 1-2 lb in all from September to November, in one feed or two.
    { name: 'September to November, first', step: 'autumn-feed-1', days: months(9, 11), N: 1 },
    { name: 'September to November, last', step: 'autumn-feed-2', days: months(9, 11), N: 1 },
  ],
  yearly: [2.5, 4],
  explained: {
    'March and April: not in the program':
      'left out where autumn was fed, as the full last feed of this program does; Nevada and eastern Washington say so',
  },
};
