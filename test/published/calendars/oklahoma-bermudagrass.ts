import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source: 'Oklahoma State University, through the Tulsa master gardeners. In a copy, year not kept.',
  program: 'bermudagrass-transition.yaml',
  grass: 'bermudagrass',
  place: { name: 'Tulsa OK', latitude: 36.15, longitude: -95.99 },
  facts: { thin: true },
  feeds: [
    // "From full green-up in late April to the first of September", in divided feeds.
    { name: 'full green-up, late April', step: 'spring-feed', days: ['04-20', '05-31'] },
    { name: 'in summer', step: 'summer-feed', days: months(6, 7) },
    { name: 'by 1 September', step: 'late-summer-feed', days: ['08-01', '09-01'] },
  ],
  other: [{ name: 'seeding', step: 'seed-thin-turf', days: ['04-20', '06-30'] }],
  yearly: [2, 5],
  explained: {},
};
