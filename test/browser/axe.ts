import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** What axe-core finds wrong with a page, a line a rule with its first places: what is serious or critical, and the rest. */
export async function axeOn(page: Page): Promise<{ readonly grave: string[]; readonly lesser: string[] }> {
  await page.evaluate(axe.source);
  const { violations } = (await page.evaluate('axe.run()')) as axe.AxeResults;
  const lines = violations.map(({ id, impact, nodes }) => ({
    isGrave: impact === 'serious' || impact === 'critical',
    line: `${impact} ${id} ×${nodes.length}: ${nodes
      .slice(0, 3)
      .map(({ target, failureSummary }) => `${target.join(' ')} ${(failureSummary ?? '').replace(/\s+/g, ' ')}`)
      .join(' | ')}`,
  }));
  return {
    grave: lines.filter(({ isGrave }) => isGrave).map(({ line }) => line),
    lesser: lines.filter(({ isGrave }) => !isGrave).map(({ line }) => line),
  };
}
