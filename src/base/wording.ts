import { agronomy } from './wording/agronomy.ts';
import { calendar } from './wording/calendar.ts';
import { did } from './wording/did.ts';
import { input } from './wording/input.ts';
import { journal } from './wording/journal.ts';
import { lawn } from './wording/lawn.ts';
import { newLawn } from './wording/new.ts';
import { plan } from './wording/plan.ts';
import { serve } from './wording/serve.ts';
import { services } from './wording/services.ts';
import { share } from './wording/share.ts';
import { site } from './wording/site.ts';
import { weather } from './wording/weather.ts';

/**
 * Every problem that soilclock can report: its severity and its words. A sentence says what is, what was expected, and
 * what to do. Tests match codes, never prose.
 */
export const wording = {
  ...input,
  ...lawn,
  ...newLawn,
  ...weather,
  ...services,
  ...serve,
  ...share,
  ...plan,
  ...journal,
  ...did,
  ...calendar,
  ...site,
  ...agronomy,
} as const;

export type ProblemCode = keyof typeof wording;
export type WordingArgs<C extends ProblemCode> = Parameters<(typeof wording)[C]['text']>[0];
