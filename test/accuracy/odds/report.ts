/** The odds as text, with the lines that say which aim is met. */
import { heading, num, signed } from '../tables.ts';
import { judgedCases, NOT_REACHED, reliabilityOf, type Skill, skillOf } from './judge.ts';
import { type ChoiceCase, LEADS, type TriggerCase } from './season-odds.ts';

const percent = (share: number, width: number): string => num(100 * share, width, 1);

/** The least skill of a median at each lead. */
const LEAST: Readonly<Record<number, number>> = { 8: 0, 4: 0, 2: 0.12, 1: 0.25 };
const COVER = [0.75, 0.87] as const;
const POINTS = 0.05;

const row = (name: string, lead: string, { n, cover, error, fixed, skill }: Skill, clean: number): string =>
  `${name.padEnd(50)}${lead.padStart(3)}${num(n, 6, 0)}${percent(cover, 7)}${percent(clean, 7)}${num(error, 7, 1)}${num(fixed, 7, 1)}${signed(100 * skill, 7, 0)}\n`;

function skillTable(cases: readonly TriggerCase[]): string {
  const labels = [...new Set(cases.map(({ label }) => label))].sort();
  const groups: [string, readonly TriggerCase[]][] = [
    ...labels.map((label): [string, TriggerCase[]] => [label, cases.filter((one) => one.label === label)]),
    ['all of soil', cases.filter(({ label }) => label.startsWith('soil'))],
    ['all of heat', cases.filter(({ label }) => label.startsWith('heat'))],
    ['all', cases],
  ];
  const lines = groups.flatMap(([name, group]) =>
    [...LEADS, null].map((lead) => {
      const ofLead = lead === null ? group : group.filter((one) => one.lead === lead);
      const clean = skillOf(ofLead, 'clean').cover;
      return row(lead === LEADS[0] ? name : '', lead === null ? 'all' : `${lead}`, skillOf(ofLead, 'withError'), clean);
    }),
  );
  return `${heading('Triggers: cover of p10 to p90, error of the median')}${' '.repeat(50)} wk     n  cover  clean  error  fixed  skill\n${lines.join('')}`;
}

function choiceTable(choices: readonly ChoiceCase[]): string {
  const line = (name: string, some: readonly ChoiceCase[]) => {
    const { n, said, held } = reliabilityOf(some, 'withError');
    const clean = reliabilityOf(some, 'clean').held;
    return `${name.padEnd(34)}${num(n, 6, 0)}${percent(said, 8)}${percent(held, 8)}${percent(clean, 8)}\n`;
  };
  const steps = [...new Set(choices.map(({ step }) => step))];
  const bands = [0, 0.5, 0.7, 0.9].map((from, i, all) => [from, all[i + 1] ?? 1.01] as const);
  return `${heading('Chosen days: in the window, %')}${' '.repeat(34)}     n    said    held   clean\n${[
    ...steps.map((step) =>
      line(
        step,
        choices.filter((one) => one.step === step),
      ),
    ),
    ...LEADS.map((lead) =>
      line(
        `all, ${lead} wk`,
        choices.filter((one) => one.lead === lead),
      ),
    ),
    ...bands.map(([from, to]) =>
      line(
        `said ${100 * from} % and more`,
        choices.filter(({ said }) => said >= from && said < to),
      ),
    ),
    line('all', choices),
  ].join('')}`;
}

const verdict = (met: boolean, text: string): string => `${met ? 'PASS' : 'MISS'}  ${text}\n`;

/** One line an aim, by what a plan can know and by hindsight. */
export function verdicts(cases: readonly TriggerCase[], choices: readonly ChoiceCase[]): string {
  const judged = judgedCases(cases);
  const { said, held } = reliabilityOf(choices, 'withError');
  const lines = (Object.keys(NOT_REACHED) as (keyof typeof NOT_REACHED)[]).flatMap((by) => {
    const whole = skillOf(judged, 'withError', by);
    const clean = skillOf(judged, 'clean', by).cover;
    const name = by === 'model' ? 'not yet reached by what the plan reads off' : 'real day ahead (hindsight)';
    return [
      verdict(
        whole.cover >= COVER[0] && whole.cover <= COVER[1],
        `${name}: p10 to p90 holds${percent(whole.cover, 5)} % of ${whole.n} real days (aim 75 to 87); ${percent(clean, 4)} % without the error path`,
      ),
      ...LEADS.map((lead) => {
        const { n, skill, error, fixed } = skillOf(
          judged.filter((one) => one.lead === lead),
          'withError',
          by,
        );
        const least = LEAST[lead] ?? 0;
        return verdict(
          skill >= least,
          `${name}: at ${lead} wk the median is off by ${num(error, 1, 2)} d, the fixed one by ${num(fixed, 1, 2)} d: ${signed(100 * skill, 1, 1)} % (aim +${100 * least}; ${n} days)`,
        );
      }),
    ];
  });
  return [
    ...lines,
    verdict(
      Math.abs(said - held) <= POINTS,
      `chosen days lie in their real window in ${percent(held, 1)} %, as the plans said in ${percent(said, 1)} % (aim within 5 points; ${choices.length} days)`,
    ),
  ].join('');
}

export const oddsText = (cases: readonly TriggerCase[], choices: readonly ChoiceCase[]): string =>
  `${skillTable(judgedCases(cases))}${choiceTable(choices)}${heading('Aims')}${verdicts(cases, choices)}`;
