import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'University of Florida IFAS, ENH-73, yearly calendar for St. Augustinegrass (1995), north Florida, high upkeep. In copies.',
  program: 'st-augustinegrass.yaml',
  grass: 'st-augustinegrass',
  place: { name: 'Gainesville FL', latitude: 29.65, longitude: -82.33 },
  facts: { 'broadleaf-weeds': true },
  pH: 5.5,
  feeds: [
    // "1-pound increments during March, May, July, and September."
    { name: 'March', step: 'spring-feed', days: months(3), N: 1 },
    { name: 'May', step: 'summer-feed', days: months(5), N: 1 },
    { name: 'July', step: 'late-summer-feed', days: months(7), N: 1 },
    { name: 'September', step: null, days: months(9), N: 1 },
  ],
  other: [
    // "A general rule of thumb": 1 March.
    { name: 'pre-emergent', step: 'summer-annual-barrier', days: ['02-15', '03-07'] },
    { name: 'broadleaf weeds', step: 'summer-broadleaf', days: months(5) },
    { name: 'potash, a month before frost', step: 'autumn-potash', days: ['10-15', '11-30'] },
  ],
  yearly: 4,
  explained: {
    'spring-feed: window': 'not before April (Louisiana): in March the grass renews its roots',
    'summer-feed: day': 'eight weeks after the first',
    'late-summer-feed: day': 'eight weeks after the second; the window opens in July',
    'September: not in the program': 'three feeds, of which August is the last (Louisiana)',
    'summer-annual-barrier: day':
      'the soil is warm enough long before 1 March; the program goes towards the 15 February of the center',
    'autumn-potash: window':
      'the made-up winters of the reference climate have 32 °F in too few years for a usual first frost',
    'year: nitrogen': 'follows from the three feeds; newer Florida rules allow less than 4 lb in many counties',
  },
};
