import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Purdue University, fall nitrogen for turf, seeding dates and spring feeds. turf.purdue.edu. Seen as excerpts.',
  program: 'kentucky-bluegrass-cool-humid.yaml',
  grass: 'kentucky-bluegrass',
  place: { name: 'West Lafayette IN', latitude: 40.42, longitude: -86.91 },
  facts: { thin: true },
  feeds: [
    { name: 'After the flush, late April or May', step: 'late-spring-feed', days: ['04-20', '05-31'] },
    { name: 'September', step: 'autumn-feed-1', days: months(9), N: [0.75, 1.0] },
    { name: 'Early to mid November', step: 'autumn-feed-2', days: ['11-01', '11-20'], N: [0.5, 1.0] },
  ],
  other: [
    { name: 'Seeding, north', step: 'overseed', days: ['08-15', '09-15'] },
    { name: 'Broadleaf through early November', step: 'autumn-broadleaf', days: ['09-15', '11-10'] },
  ],
  explained: {},
};
