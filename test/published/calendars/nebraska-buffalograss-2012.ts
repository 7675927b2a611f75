import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source: 'University of Nebraska, G2178, buffalograss management calendar (2012). Seen as an excerpt.',
  program: 'buffalograss.yaml',
  grass: 'buffalograss',
  place: { name: 'Lincoln NE', latitude: 40.81, longitude: -96.68 },
  facts: { 'darker-green': true },
  feeds: [
    { name: 'June, if none came with the pre-emergent', step: 'june-feed', days: months(6), N: [0.75, 1] },
    { name: 'July', step: 'july-feed', days: months(7), N: [0.75, 1] },
  ],
  other: [
    { name: 'pre-emergent', step: 'summer-annual-barrier', days: ['04-15', '05-01'] },
    { name: 'mowing begins', step: 'mowing-height', days: months(5) },
    { name: 'chinch bugs', step: 'chinch-bug-scout', days: months(6, 7) },
    { name: 'broadleaf weeds and crabgrass in June', step: null, days: months(6) },
  ],
  yearly: [1.5, 2],
  explained: {
    'broadleaf weeds and crabgrass in June: not in the program':
      'it takes quinclorac and a day under 75 °F; the program treats while the lawn sleeps',
  },
};
