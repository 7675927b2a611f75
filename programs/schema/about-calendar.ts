import type { About } from '../../src/emit/json-schema.ts';

/** A sentence on each key of a calendar of several lawns that other files have not. */
export const aboutCalendar: About = {
  lawns: ['The lawn files, from the folder of this one.', ['plot-7/lawn.yaml', 'neighbor/lawn.yaml']],
  'calendar.as': ['Who reads it: the owner; or a helper, who sees the work alone, and the names of the lawns.'],
  'calendar.detail': [
    'How much it carries: jobs alone; windows, buying, watering in and keep-off too; soil checks as well.',
  ],
};
