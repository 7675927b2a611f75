import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source: 'University of Georgia, Glynn County, Coastal Courier. In a copy, year not kept.',
  program: 'centipedegrass.yaml',
  grass: 'centipedegrass',
  place: { name: 'Brunswick GA', latitude: 31.15, longitude: -81.49 },
  feeds: [
    // The soil passed 65 F on 7 or 8 April; two weeks later the window opens, "until the end of May".
    { name: 'first feed', step: 'spring-feed', days: ['04-20', '05-31'], N: 0.5 },
    { name: 'second and last feed', step: 'summer-feed', days: months(7), N: 0.5 },
  ],
  yearly: 1,
  explained: {},
};
