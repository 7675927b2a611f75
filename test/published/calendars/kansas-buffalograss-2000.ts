import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source: 'Kansas State University, Kansas lawn-care calendar, Hillsboro Free Press (19 April 2000). In a copy.',
  program: 'buffalograss.yaml',
  grass: 'buffalograss',
  place: { name: 'Hillsboro KS', latitude: 38.35, longitude: -97.2 },
  facts: { 'darker-green': true },
  feeds: [
    { name: 'early June', step: 'june-feed', days: ['06-01', '06-10'], N: 1 },
    { name: 'perhaps mid-July', step: 'july-feed', days: ['07-08', '07-22'], N: 1 },
  ],
  other: [
    // By 15 April, or before local redbuds are in full bloom.
    { name: 'first crabgrass preventer', step: 'summer-annual-barrier', days: ['03-25', '04-15'] },
    { name: 'second crabgrass preventer', step: null, days: ['05-15', '06-15'] },
    { name: 'core aeration, if necessary', step: null, days: months(6) },
    { name: 'broadleaf weeds', step: 'winter-broadleaf', days: months(3) },
  ],
  yearly: [1, 2],
  explained: {
    'second crabgrass preventer: not in the program':
      'many labels allow one a year; a second belongs to the label in hand',
    'core aeration, if necessary: not in the program':
      'buffalograss makes no thatch; packed ground is cored with other work',
    'july-feed: rate': '0.75 lb, the lower end of Nebraska’s range, so that the year stays under 2 lb',
  },
};
