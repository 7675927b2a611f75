import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Louisiana State University AgCenter, centipedegrass lawns (20 March 2020), soluble fertilizer. Seen as an excerpt.',
  program: 'centipedegrass.yaml',
  grass: 'centipedegrass',
  place: { name: 'Amite LA', latitude: 30.73, longitude: -90.51 },
  feeds: [
    { name: 'April', step: 'spring-feed', days: months(4), N: 0.5 },
    { name: 'June', step: 'summer-feed', days: months(6), N: 0.5 },
    { name: 'August, if more growth is wanted', step: null, days: months(8), N: 0.5 },
  ],
  yearly: [1, 1.5],
  explained: {
    'spring-feed: window': 'from May on, as in South Carolina; North Carolina allows none before June',
    'summer-feed: window': 'the July of Georgia, eight weeks after the first',
    'August, if more growth is wanted: not in the program':
      'a pound a year is enough, and more brings decline (Georgia)',
  },
};
