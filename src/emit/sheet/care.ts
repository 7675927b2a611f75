import type { Application } from '../../model/season.ts';

/** Whether a label, a bag or a rule of the place has a say in the work. */
export const isTouchy = ({ work, areas }: Application): boolean =>
  work === 'spread' || work === 'spray' || areas.some(({ product }) => product !== null);
