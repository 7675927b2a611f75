import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'University of Florida IFAS, ENH-73, yearly calendar for St. Augustinegrass (1995), south Florida, low upkeep. In copies.',
  program: 'st-augustinegrass.yaml',
  grass: 'st-augustinegrass',
  place: { name: 'Fort Lauderdale FL', latitude: 26.12, longitude: -80.14 },
  facts: { 'broadleaf-weeds': true },
  feeds: [
    // The table has the first feed of south Florida in February.
    { name: 'after green-up', step: 'spring-feed', days: months(2, 4), N: 1 },
    // "In October for south Florida."
    { name: 'early fall', step: 'late-summer-feed', days: ['09-22', '10-31'], N: 1 },
  ],
  other: [
    // 1 February.
    { name: 'pre-emergent', step: 'summer-annual-barrier', days: ['01-25', '02-10'] },
    { name: 'broadleaf weeds', step: 'summer-broadleaf', days: months(5) },
  ],
  yearly: 2,
  explained: {
    'late-summer-feed: window': 'August is the last (Louisiana), for one program from the Gulf to the tropics',
    'summer-annual-barrier: day': 'ten days after the opening on 1 February, towards the 15 February of the center',
    'summer-feed: not printed': 'three feeds as in Louisiana, instead of the two of low upkeep',
    'year: nitrogen': 'follows from the three feeds; within the 2 to 4 lb of Georgia',
  },
};
