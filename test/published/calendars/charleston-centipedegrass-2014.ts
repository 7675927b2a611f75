import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Clemson Cooperative Extension, quick tips on growing centipede, Post and Courier (22 March 2014). In a copy.',
  program: 'centipedegrass.yaml',
  grass: 'centipedegrass',
  place: { name: 'Charleston SC', latitude: 32.78, longitude: -79.93 },
  feeds: [
    { name: 'May', step: 'spring-feed', days: months(5), N: 0.5 },
    { name: 'August', step: 'summer-feed', days: months(8), N: 0.5 },
  ],
  yearly: 1,
  explained: {
    'summer-feed: day': 'the program takes the July of Georgia, well before frost; the window reaches into August',
  },
};
