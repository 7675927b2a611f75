import type { PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source: 'Utah State University, Carbon County, autumn feeds. In a copy.',
  program: 'cool-season-arid.yaml',
  grass: 'kentucky-bluegrass',
  place: { name: 'Price UT', latitude: 39.6, longitude: -110.81 },
  facts: { irrigated: true },
  feeds: [
    { name: 'Early September', step: 'autumn-feed-1', days: ['09-01', '09-15'], N: 1 },
    { name: 'After the last mowing', step: 'autumn-feed-2', days: ['10-15', '11-20'], N: 1 },
  ],
  explained: {
    'late-spring-feed: not printed':
      'the column is about autumn alone; Colorado and eastern Washington feed in May or June as well',
  },
};
