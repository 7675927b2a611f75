import type { Page } from 'playwright-core';
import { focused, reachable } from './in-page/layout.ts';

/** What the tab key misses, or reaches out of the page's order or without showing where it is; empty where all is well. */
export async function keyboardFaults(page: Page): Promise<string[]> {
  const wanted = await page.evaluate(reachable);
  const order: number[] = [];
  const unseen: string[] = [];
  for (let pressed = 0; pressed < wanted.length + 5; pressed++) {
    await page.keyboard.press('Tab');
    const { reached, isShown } = await page.evaluate(focused);
    if (reached === null || order.includes(reached)) break;
    order.push(reached);
    if (!isShown) unseen.push(`no ring that can be seen: ${wanted[reached]}`);
  }
  const missed = wanted.filter((_, index) => !order.includes(index)).map((one) => `never reached: ${one}`);
  const outOfOrder = order.some((one, index) => index > 0 && one < (order[index - 1] ?? 0));
  return [...missed, ...unseen, ...(outOfOrder ? [`out of order: ${order.join(' ')}`] : [])];
}
