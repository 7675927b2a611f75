import type { PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'University of Minnesota Extension, lawn care windows: nitrogen from its blog (2015), the rest by way of wjon.com (2022). In copies, without rates.',
  program: 'kentucky-bluegrass-cool-humid.yaml',
  grass: 'kentucky-bluegrass',
  place: { name: 'Minneapolis MN', latitude: 44.98, longitude: -93.27 },
  facts: { thin: true },
  feeds: [
    { name: 'Nitrogen, second best', step: 'late-spring-feed', days: ['04-20', '06-15'] },
    { name: 'Nitrogen, best', step: 'autumn-feed-1', days: ['08-20', '09-30'] },
  ],
  other: [
    { name: 'Pre-emergent', step: 'summer-annual-barrier', days: ['04-10', '05-20'] },
    { name: 'Seeding', step: 'overseed', days: ['08-01', '09-30'] },
    { name: 'Coring', step: 'aerate', days: ['08-10', '10-20'] },
    { name: 'Mowing until early November', step: 'last-mowing', days: ['10-20', '11-10'] },
    { name: 'Mowing from the last week of April', step: 'first-mowing', days: ['04-20', '05-05'] },
  ],
  explained: {
    'autumn-feed-2: not printed':
      'Minnesota stops in mid-October; Purdue and Illinois feed while the grass is green, which the program does with their least',
  },
};
