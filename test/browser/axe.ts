import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** What axe-core finds wrong with a page, a line a rule with its first places: what is serious or critical, and the rest. */
export async function axeOn(page: Page): Promise<{ readonly grave: string[]; readonly lesser: string[] }> {
  await page.evaluate(axe.source);
  const { violations, incomplete } = (await page.evaluate('axe.run()')) as axe.AxeResults;
  const isGrave = ({ impact }: axe.Result) => impact === 'serious' || impact === 'critical';
  // What lies behind the texts of drawings it cannot tell: that is measured as painted. What a scrolled box cuts off is told
  // where the page is wider. All others have to be clear.
  const unclear = incomplete
    .filter(({ id }) => id === 'color-contrast')
    .map((one) => ({ ...one, nodes: one.nodes.filter((node) => !isDrawn(node) && !isCutOff(node)) }))
    .filter(({ nodes }) => nodes.length > 0);
  return {
    grave: [...violations.filter(isGrave), ...unclear].map(lineOf),
    lesser: violations.filter((one) => !isGrave(one)).map(lineOf),
  };
}

const isDrawn = ({ html }: axe.NodeResult) => /^<(text|tspan)\b/.test(html);
const isCutOff = ({ any }: axe.NodeResult) => any.some(({ data }) => data?.messageKey === 'elmPartiallyObscured');

const lineOf = ({ id, impact, nodes }: axe.Result): string =>
  `${impact} ${id} ×${nodes.length}: ${nodes
    .slice(0, 3)
    .map(({ target, failureSummary }) => `${target.join(' ')} ${(failureSummary ?? '').replace(/\s+/g, ' ')}`)
    .join(' | ')}`;
