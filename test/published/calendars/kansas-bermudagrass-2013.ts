import { months, type PublishedCalendar } from './calendar.ts';

export const calendar: PublishedCalendar = {
  source: 'Kansas State University, warm-season lawn calendar, Wichita Eagle (2013). In a copy.',
  program: 'bermudagrass-transition.yaml',
  grass: 'bermudagrass',
  place: { name: 'Wichita KS', latitude: 37.69, longitude: -97.34 },
  facts: { grubs: true },
  feeds: [
    // "Three applications: mid-May, June and early August"; of the levels one to four the third.
    { name: 'first of three feeds', step: 'spring-feed', days: ['05-08', '05-22'], N: 1 },
    { name: 'second of three feeds', step: 'summer-feed', days: months(6), N: 1 },
    // None after 15 August.
    { name: 'third of three feeds', step: 'late-summer-feed', days: ['08-01', '08-15'], N: 1 },
  ],
  other: [
    // "Around the first of March" long-term, "around the first of April" short-term.
    { name: 'crabgrass preventer', step: 'summer-annual-barrier', days: ['03-01', '04-07'] },
    { name: 'core aeration', step: 'core', days: months(6) },
    // By 1 July, from mid-May at the soonest.
    { name: 'grub preventer', step: 'grub-preventer', days: ['05-15', '07-01'] },
    { name: 'broadleaf weeds', step: 'winter-broadleaf', days: months(3) },
  ],
  yearly: 3,
  explained: {
    'grub-preventer: day': 'nearer to the hatch is better (Purdue): July, as in Kentucky and North Carolina',
  },
};
