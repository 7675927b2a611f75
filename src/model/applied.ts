import { type Day, formatDay } from '../base/day.ts';
import type { Application } from './season.ts';

/** The application that work belongs to: of its step, in the season of its day; none where the plan does not reach that day. */
export function applicationFor<A extends Pick<Application, 'id' | 'seasonSpan'>>(
  { step, date }: { readonly step?: string; readonly date: Day },
  applications: readonly A[],
): A | undefined {
  const day = formatDay(date);
  return applications.find(({ id, seasonSpan: { start, end } }) => id === step && start <= day && day <= end);
}
