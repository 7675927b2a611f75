import type { PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source: 'University of Illinois (1995), lawn fertilizing, the program of three feeds. oldhouseweb.com. In a copy.',
  program: 'kentucky-bluegrass-cool-humid.yaml',
  grass: 'kentucky-bluegrass',
  place: { name: 'Urbana IL', latitude: 40.11, longitude: -88.21 },
  feeds: [
    { name: 'Early May', step: 'late-spring-feed', days: ['05-01', '05-15'], N: 1 },
    { name: 'Early September', step: 'autumn-feed-1', days: ['09-01', '09-15'], N: 1 },
    { name: 'Late October or November', step: 'autumn-feed-2', days: ['10-20', '11-30'], N: 1 },
  ],
  yearly: 3,
  explained: {
    'late-spring-feed: rate':
      'the least of Nebraska’s 0.75 to 1.0, since heavy feeding in spring is paid for in summer',
    'autumn-feed-2: rate':
      'the least of Purdue’s 0.5 to 1.0, since Nebraska and Wisconsin found that the late feed is taken up poorly',
    'year: nitrogen': 'follows from the two smaller feeds; within the 1 to 4 lb of the same publication',
  },
};
