import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Louisiana State University AgCenter, taking care of St. Augustinegrass lawns (27 March 2020). Seen as an excerpt.',
  program: 'st-augustinegrass.yaml',
  grass: 'st-augustinegrass',
  place: { name: 'Amite LA', latitude: 30.73, longitude: -90.51 },
  feeds: [
    { name: 'April', step: 'spring-feed', days: months(4), N: 1 },
    { name: 'June', step: 'summer-feed', days: months(6), N: 1 },
    { name: 'August, if more growth is wanted', step: 'late-summer-feed', days: months(8), N: 1 },
  ],
  yearly: [2, 3],
  explained: {},
};
