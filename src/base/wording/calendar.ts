import { error, list, note } from './forms.ts';

/** Problems of calendars of several lawns. */
export const calendar = {
  'calendar-for-lawn': error(
    (a: { lawns: readonly string[] }) =>
      `This file is a calendar of several lawns, and this asks for one of them. Name its lawn file: ${list(a.lawns)}. "plan" and "check" take the calendar as a whole.`,
  ),
  'calendar-same-id': error(
    (a: { id: string; other: string | null }) =>
      `This lawn has the id "${a.id}", and so has ${a.other === null ? 'the calendar itself' : `"${a.other}"`}: their feeds would be one file. Give each an id of its own.`,
  ),
  'calendar-option': error(
    (a: { option: string }) =>
      `${a.option} is of one lawn, and a calendar has several. Plan that lawn by its own file, or leave ${a.option} out.`,
  ),
  'calendar-kept': note(
    (a: { ref: string }) =>
      `There is no new plan of "${a.ref}": its events stay in the calendar as they were published. Mend what is told of it and plan again.`,
  ),
} as const;
