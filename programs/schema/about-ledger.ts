import type { About } from '../../src/emit/json-schema.ts';

/** A sentence on each key of a ledger. */
export const aboutLedger: About = {
  events: ["The owner's feed: one entry an event, in the order of their UIDs."],
  readers: ['The feeds of other readers, by id.'],
  uid: ['What calendars know the event by; never reused.', '7f3k9q2m-2027-autumn-feed-1-job@soilclock.invalid'],
  'event.kind': ['What the event is about: a job, a window of days, a day of the soil and so on.', 'job'],
  'event.season': ['The year in which its season begins.', 2027],
  'event.step': ['The step that it is of.', 'autumn-feed-1'],
  'event.day': ['The chosen day, or the first day of a window.', '2027-04-03'],
  dueSince: ['The first published day that passed without the work being done.', '2027-04-03'],
  hash: ['Of what the event says; another one is a new revision.', 'e3b0c44298fc1c14'],
  sequence: ['How often it was revised.', 2],
  lastModified: ['When it was revised last.', '2027-04-02T00:00:00Z'],
  allDay: ['Whether it has days and no hours.'],
  'event.start': ['Its first day, or the instant when it begins.', '2027-04-03T12:15:00Z'],
  'event.end': ['The first day, or the instant, after it.', '2027-04-03T13:05:00Z'],
  'event.status': ['TENTATIVE until the window is open; CANCELLED where nothing comes of it.'],
  transparent: ['Whether it leaves the day free.'],
  categories: ['What calendars file it under.', ['Lawn']],
  remindersMin: ['Minutes before its start at which it reminds.', [720]],
  cancelledOn: ['The day of the plan that cancelled it.', '2027-04-10'],
  removedOn: [
    'The day of the plan with which it left the feed; its words are gone then, its SEQUENCE counts on.',
    '2027-05-10',
  ],
  summary: ['The title of that revision.', 'Autumn feed'],
  description: ['The words of that revision.', 'Spread 16 lb on the front.'],
};
