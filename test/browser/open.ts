/** A page opened as one reader sees it, and everything that it complained of or asked for. */
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { listen } from '../../src/shell/serve/listen.ts';
import { root } from '../kit.ts';

/** How a reader looks: how wide, in which light, with or without scripts. */
export interface View {
  readonly width: number;
  readonly height: number;
  readonly colorScheme: 'light' | 'dark';
  readonly scripts: boolean;
}

export const NARROW = { width: 320, height: 640 } as const;
export const PHONE = { width: 390, height: 844 } as const;
export const DESKTOP = { width: 1280, height: 900 } as const;
export const SIZES = [NARROW, PHONE, DESKTOP] as const;

/** Every size in both lights, with scripts and without. */
export const VIEWS: readonly View[] = SIZES.flatMap((size) =>
  (['light', 'dark'] as const).flatMap((colorScheme) =>
    [true, false].map((scripts) => ({ ...size, colorScheme, scripts })),
  ),
);

export const nameOf = ({ width, colorScheme, scripts }: View): string =>
  `${width}-${colorScheme}${scripts ? '' : '-no-scripts'}`;

export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors and warnings of the console, errors of scripts, answers that failed. */
  readonly complaints: string[];
  /** Addresses asked for that are of another host. */
  readonly strangers: string[];
}

/**
 * Opens a page in a context of its own.
 *
 * @param stand What stands for hosts that are not on this machine: an origin, and where it is answered from.
 */
export async function open(browser: Browser, address: string, view: View, stand: Stand | null = null): Promise<Opened> {
  const context = await browser.newContext({
    viewport: { width: view.width, height: view.height },
    colorScheme: view.colorScheme,
    javaScriptEnabled: view.scripts,
    // As a phone lays pages out: by the width that the page itself asks for.
    isMobile: view.width < 500,
    hasTouch: view.width < 500,
    locale: 'en-US',
    timezoneId: 'UTC',
  });
  const [complaints, strangers]: [string[], string[]] = [[], []];
  await context.route('**/*', async (route) => {
    const asked = route.request().url();
    if (stand && asked.startsWith(stand.origin)) {
      return route.fulfill({ response: await route.fetch({ url: stand.answers + asked.slice(stand.origin.length) }) });
    }
    if (isOf(address, asked)) return route.continue();
    strangers.push(asked);
    return route.abort();
  });
  const page = await context.newPage();
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`script: ${error.message}`));
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()}: ${response.url()}`);
  });
  await page.goto(address, { waitUntil: 'load' });
  return { page, context, complaints, strangers };
}

/** An origin such as `https://lawns.example`, and the one on this machine that gives its files. */
export interface Stand {
  readonly origin: string;
  readonly answers: string;
}

/** Gives out a folder from this machine as `soilclock serve` does. */
export async function serve(folder: string): Promise<{ readonly origin: string; readonly close: () => Promise<void> }> {
  const served = await listen(folder, 'localhost', 0);
  if ('problem' in served) throw new Error(served.problem.message);
  return { origin: `http://localhost:${served.port}`, close: () => served.close() };
}

/** Of the page's own host, or within itself; of a file nothing but the file. */
const isOf = (address: string, asked: string): boolean => {
  const [own, other] = [new URL(address), new URL(asked)];
  if (other.protocol === 'data:' || other.protocol === 'blob:') return true;
  return own.protocol === 'file:' ? own.pathname === other.pathname : own.origin === other.origin;
};

/** Keeps a picture of the whole page, or of what its first screen shows. */
export async function keepPicture(page: Page, name: string, fullPage = true): Promise<void> {
  const folder = path.join(root, 'out/browser');
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: path.join(folder, `${name}.png`), fullPage });
}
