import type { PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Kansas State University, fertilizing warm-season lawn grasses, Great Bend Tribune and Rural Messenger. In copies, year not kept.',
  program: 'zoysiagrass.yaml',
  grass: 'zoysiagrass',
  place: { name: 'Great Bend KS', latitude: 38.36, longitude: -98.76 },
  feeds: [
    // The total in two equal halves.
    { name: 'early June', step: 'spring-feed', days: ['06-01', '06-10'], N: [0.75, 1] },
    { name: 'around mid-July', step: 'summer-feed', days: ['07-08', '07-22'], N: [0.75, 1] },
  ],
  yearly: [1.5, 2],
  explained: {
    'spring-feed: day':
      'by the soil, as in Georgia, and the nearest reference climate is warmer than Great Bend in spring; Kansas waits for June',
  },
};
