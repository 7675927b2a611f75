import * as v from 'valibot';
import { displayOf } from '../../base/display.ts';
import { AreaSchema } from '../../model/area.ts';
import type { Draft } from '../../model/draft.ts';
import { less } from '../../read/answers/area.ts';
import { isProblems, type Question, type World } from '../../read/answers/question.ts';
import { type Series, seriesIn } from '../../read/answers/series.ts';
import { type Asking, askOne, BACK, type Outcome, type Put, say } from './ask-one.ts';
import { askSeries } from './ask-series.ts';

/** Asks for areas, one after the other, each with what is taken off it, and shows what they come to. */
export async function askAreas(question: Question, before: Draft, asking: Asking): Promise<Outcome> {
  const drafts: Draft[] = [before];
  for (;;) {
    const draft = drafts.at(-1) as Draft;
    const first = drafts.length === 1;
    const outcome = await askArea(question, draft, asking, {
      prompt: first ? 'Area 1, its name and shape' : `Area ${drafts.length}`,
      ...(!first && { empty: 'no more' }),
    });
    if (outcome === null || outcome === draft) return outcome;
    if (outcome === BACK) {
      if (first) return BACK;
      drafts.pop();
      say(asking, drafts.length === 1 ? 'No area is left.' : soFar(drafts.at(-1) as Draft, asking.world));
      continue;
    }
    const whole = await askLess(outcome, asking);
    if (whole === null) return null;
    if (whole !== BACK) drafts.push(whole);
  }
}

/** Asks for one area; for one of many numbers that names none of them, number by number. */
async function askArea(question: Question, draft: Draft, asking: Asking, put: Put): Promise<Outcome> {
  for (;;) {
    const found: { series: Series | null } = { series: null };
    const parse: Question['parse'] = (text, ...rest) => {
      found.series = seriesIn(text, draft.display?.units === 'us' ? 'ft' : 'm');
      const { series } = found;
      // Its numbers are still to come, so only its name can be wrong.
      const parsed = question.parse(series ? series.text([series.example]) : text, ...rest);
      return found.series === null || isProblems(parsed) ? parsed : {};
    };
    const outcome = await askOne({ ...question, parse }, draft, asking, put);
    if (found.series === null || outcome === null || outcome === BACK || outcome === draft) return outcome;
    const whole = await askSeries(found.series, draft, asking, (grown) => soFar(grown, asking.world));
    if (whole !== BACK) return whole;
  }
}

/** Asks what is taken off the last area, until nothing more is. */
async function askLess(measured: Draft, asking: Asking): Promise<Outcome> {
  let draft = measured;
  for (;;) {
    say(asking, soFar(draft, asking.world));
    const last = Object.keys(draft.areas ?? {}).at(-1);
    const outcome = await askOne(less, draft, asking, { prompt: `Take off ${last}`, empty: 'nothing' });
    if (outcome === null || outcome === BACK || outcome === draft) return outcome;
    draft = outcome;
  }
}

/** The area that was measured last, and all of them together. */
function soFar({ areas, display }: Draft, world: World): string {
  const { area } = displayOf(display?.units === 'us' ? 'us' : 'metric', display?.language ?? 'en');
  const measured = Object.entries(areas ?? {}).map(
    ([id, shape]) => [id, world.netArea(v.parse(AreaSchema, shape))] as const,
  );
  const [id, last] = measured.at(-1) ?? ['', 0];
  const inAll = measured.reduce((sum, [, one]) => sum + one, 0);
  return `${id}: ${area(last)}${measured.length > 1 ? `; in all ${area(inAll)}` : ''}`;
}
