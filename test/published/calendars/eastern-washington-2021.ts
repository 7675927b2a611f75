import type { PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Washington State University, eastern Washington, four feeds, by way of the Ritzville Journal (2021). In a copy, without rates.',
  program: 'cool-season-arid.yaml',
  grass: 'kentucky-bluegrass',
  place: { name: 'Ritzville WA', latitude: 47.13, longitude: -118.38 },
  facts: { irrigated: true },
  feeds: [
    { name: 'About 1 May', step: null, days: ['04-24', '05-08'] },
    { name: 'About 15 June', step: 'late-spring-feed', days: ['06-08', '06-22'] },
    { name: 'About 1 September', step: 'autumn-feed-1', days: ['08-25', '09-08'] },
    { name: '1 to 15 November', step: 'autumn-feed-2', days: ['11-01', '11-15'] },
  ],
  explained: {
    'About 1 May: not in the program': 'three feeds, as in Colorado; the last of autumn carries the green-up',
    'late-spring-feed: day': 'one feed stands for 1 May and 15 June, and lies between them',
  },
};
