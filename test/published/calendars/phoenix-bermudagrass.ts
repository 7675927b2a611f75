import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'University of Arizona, spring weed control (February 1997) and overseeding, az1683 (2015). Seen as excerpts; the monthly feeds from a desert gardening calendar, in a copy.',
  program: 'bermudagrass-warm-humid.yaml',
  grass: 'bermudagrass',
  place: { name: 'Phoenix AZ', latitude: 33.45, longitude: -112.07 },
  facts: { 'winter-ryegrass': true, irrigated: true },
  feeds: [
    // Each month from late April or early May on.
    { name: 'late April or early May', step: 'spring-feed', days: ['04-20', '05-10'] },
    { name: 'June', step: 'summer-feed', days: months(6) },
    { name: 'July', step: 'late-summer-feed', days: months(7), N: 0.5 },
  ],
  other: [
    { name: 'pre-emergent', step: 'summer-annual-barrier', days: ['02-25', '03-05'] },
    { name: 'ryegrass', step: 'winter-ryegrass', days: months(10) },
  ],
  explained: {
    'summer-annual-barrier: day':
      'the reference climate has 50 °F at 2 in all winter; the program’s best day is Arkansas’s 20 February',
    'late-summer-feed: rate': 'three feeds of 1.0 lb instead of five or six smaller ones',
  },
};
