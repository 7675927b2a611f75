import type { PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source:
    'Washington State University, western Washington, by way of the Chinook Observer; four feeds of 1.0 lb each after a trade journal of the state (2023). In copies.',
  program: 'perennial-ryegrass-maritime.yaml',
  grass: 'perennial-ryegrass',
  place: { name: 'Seattle WA', latitude: 47.61, longitude: -122.33 },
  feeds: [
    // Easter 2027 is 28 March.
    { name: 'Within a week of Easter', step: 'spring-feed', days: ['03-21', '04-04'], N: 1 },
    { name: 'Within a week of Memorial Day', step: 'late-spring-feed', days: ['05-24', '06-07'], N: 1 },
    { name: 'Within a week of Labor Day', step: 'autumn-feed-1', days: ['08-30', '09-13'], N: 1 },
    { name: 'Within a week of Thanksgiving', step: 'autumn-feed-2', days: ['11-18', '12-02'], N: 1 },
  ],
  yearly: 4,
  explained: {
    'spring-feed: rate': 'the least of King County’s 1/2 to 1 lb; the publication itself asks for less in spring',
    'late-spring-feed: rate': 'the middle of King County’s 1/2 to 1 lb',
    'autumn-feed-2: rate': 'the least of Purdue’s 0.5 to 1.0, since the late feed is taken up poorly',
    'year: nitrogen': 'follows from the smaller feeds; within the 2 to 4 lb of Illinois',
  },
};
