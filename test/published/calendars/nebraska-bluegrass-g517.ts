import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'University of Nebraska-Lincoln Extension, G517, Kentucky bluegrass management calendar, its first half, seen as an excerpt; the September feed from a column of the Extension of 2021 (theindependent.com), in a copy.',
  program: 'kentucky-bluegrass-cool-humid.yaml',
  grass: 'kentucky-bluegrass',
  place: { name: 'Lincoln NE', latitude: 40.81, longitude: -96.68 },
  facts: { 'summer-patch': true },
  feeds: [
    { name: 'May', step: 'late-spring-feed', days: ['05-01', '06-01'], N: [0.75, 1.0] },
    { name: 'Beginning to middle of September', step: 'autumn-feed-1', days: ['09-01', '09-15'], N: [1.5, 2.0] },
  ],
  other: [
    { name: 'Pre-emergent', step: 'summer-annual-barrier', days: ['04-15', '05-01'] },
    { name: 'Billbugs', step: 'billbug-scout', days: months(5) },
    { name: 'Summer patch', step: 'summer-patch-spray', days: ['05-01', '06-15'] },
  ],
  explained: {
    'autumn-feed-1: rate':
      '1.0 lb is the most at a time with every other publication; 1.5 to 2 asks for slow sources alone',
    'autumn-feed-2: not printed':
      'the part of the calendar that was seen ends with summer, and the column is about September',
  },
};
