// A real browser on the real service and database with the demonstration in it. Where no Chromium
// is found, the journeys are skipped by name and say why.

import { existsSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe } from '@jest/globals';
import {
  chromium,
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  type Page,
} from 'playwright-core';
import { Companies } from '../../apps/api/data/companies.js';
import { hashPassword } from '../../apps/api/people/passwords.js';
import { SignInLinks } from '../../apps/api/people/sign-in-links.js';
import { fillDemonstration } from '../../apps/cli/demonstration.js';
import { DEMONSTRATION, PEOPLE } from '../../apps/cli/demonstration/people.js';
import { withService, type Running } from '../service.js';

export const PASSWORD = 'a password for the demonstration';
export type Who = (typeof PEOPLE)[number];

const CHROMIUM = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const found = existsSync(CHROMIUM);
const built = existsSync('.build/office/index.html');
const missing = found
  ? 'the pages are not built, run npm run build'
  : `no Chromium at ${CHROMIUM}, install it or name it in CHROMIUM`;

/** Describes a journey; skipped by its name where there is no browser or no built pages. */
export const journey = (name: string, tell: () => void): void =>
  found && built ? describe(name, tell) : describe.skip(`${name} (skipped: ${missing})`, tell);

export interface Office extends Running {
  readonly browser: Browser;
  /** A page of one's own, signed in as this person. */
  as(who: Who, options?: BrowserContextOptions): Promise<Page>;
  /** A page where nobody is signed in. */
  stranger(options?: BrowserContextOptions): Promise<Page>;
}

/** Registers the hooks of one journey. */
export function withOffice(): Office {
  const running = withService({ keys: true });
  let browser: Browser | undefined;
  const open: BrowserContext[] = [];
  beforeAll(async () => {
    await fillDemonstration(running.service);
    await setPasswords(running);
    browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
  }, 120_000);
  afterAll(async () => {
    for (const each of open) await each.close();
    await browser?.close();
  });
  const context = async (options: BrowserContextOptions = {}) => {
    if (!browser) throw new Error('The browser is there only inside tests.');
    const made = await browser.newContext({
      baseURL: running.address,
      locale: 'en-US',
      ...options,
    });
    made.setDefaultTimeout(10_000);
    open.push(made);
    return made;
  };
  return {
    get service() {
      return running.service;
    },
    get database() {
      return running.database;
    },
    get keysFolder() {
      return running.keysFolder ?? '';
    },
    get address() {
      return running.address;
    },
    get browser() {
      return browser as Browser;
    },
    stranger: async (options?: BrowserContextOptions) => (await context(options)).newPage(),
    as: async (who: Who, options?: BrowserContextOptions) => {
      const made = await context(options);
      const token = await running.service.get(SignInLinks).make(DEMONSTRATION.company, who.id);
      const answer = await made.request.post('/api/session/link', { data: { token } });
      if (!answer.ok()) throw new Error(`signing in failed: ${await answer.text()}`);
      return made.newPage();
    },
  };
}

/** Waits until the page shows what it has to show: its heading, and nothing loading any more. */
export async function settled(page: Page): Promise<void> {
  await page.locator('main h1').first().waitFor();
  await page.waitForFunction(
    () =>
      !/\b(Loading|Counting|Asking)\b.*…/.test(document.body.innerText) &&
      // A name that is still asked for.
      ![...document.querySelectorAll('main :is(dd, td, li)')].some((at) => at.textContent === '…'),
  );
}

const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What changes with the window's width and colors, and not with what the page holds. */
export const LOOKS = [
  'color-contrast',
  'link-in-text-block',
  'meta-viewport',
  'region',
  'scrollable-region-focusable',
  'target-size',
];

/** Every finding of axe, or of some of its rules, as one line each; empty is good. */
export async function axe(page: Page, rules?: string[], without: string[] = []): Promise<string[]> {
  const builder = new AxeBuilder({ page })
    .options({ resultTypes: ['violations'] })
    .disableRules(without);
  // One frame, one page: nothing to gather from others, which would open a page each time.
  const { violations } = await (rules ? builder.withRules(rules) : builder.withTags(STANDARDS))
    .setLegacyMode()
    .analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(
      ({ target, failureSummary }) =>
        `${id}: ${target.join(' ')} ${failureSummary?.split('\n')[1] ?? ''}`,
    ),
  );
}

async function setPasswords({ service }: Running): Promise<void> {
  const { prisma } = service.get(Companies).of(DEMONSTRATION.company);
  const passwordHash = await hashPassword(PASSWORD);
  await prisma.person.updateMany({ data: { passwordHash } });
}
