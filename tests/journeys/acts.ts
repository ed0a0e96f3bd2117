// What people do on the pages, by the words they read there: the steps of which stories are made.

import type { Page } from 'playwright-core';

export const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
export const link = (page: Page, name: string | RegExp) => page.getByRole('link', { name });
export const type = (page: Page, label: string | RegExp, text: string) =>
  page.getByLabel(label).first().fill(text);
export const choose = (page: Page, label: string | RegExp, option: string) =>
  page.getByLabel(label).first().selectOption({ label: option });
export const pick = (page: Page, name: string | RegExp) =>
  page.getByRole('radio', { name }).first().check();

export async function recordFacts(
  page: Page,
  how: string,
  source: string,
  fill: () => Promise<void>,
): Promise<void> {
  await link(page, 'Record or change facts').click();
  await page.getByRole('heading', { level: 1, name: /^Facts for/ }).waitFor();
  await fill();
  await pick(page, how);
  await type(page, 'From whom or what', source);
  await button(page, 'Record these facts').click();
  await page.getByRole('heading', { name: 'Facts for this stage' }).waitFor();
}

export const stage = (page: Page, name: string) =>
  page.getByRole('heading', { level: 1, name: `Main roof: ${name}` }).waitFor();
/** The rules have answered what is filled in. */
export const asked = (page: Page) =>
  page
    .getByRole('region', { name: 'What the rules say' })
    .getByText(/rules? asked:/)
    .waitFor();
export const save = (page: Page) => button(page, 'Save and continue').click();

export async function recordFactsWithReason(page: Page): Promise<void> {
  await link(page, 'Record or change facts').click();
  await page.getByLabel(/^Spacing of supports/).fill('24\n23.5\n24.25');
  await type(page, 'Specific gravity', '0.42');
  await type(page, 'How deep the fastener bites', '1.25');
  await choose(page, 'Is there an old roof', 'No');
  await choose(page, 'Contact with treated lumber', 'None');
  await choose(page, 'Metal of the fasteners', 'Galvanized');
  await choose(page, 'Was the framing looked at', 'Yes');
  await choose(page, 'Air inside', 'Unheated');
  await choose(page, 'Condensation control', 'Absorbing fleece');
  await type(page, 'Underlayment', 'none on purlins');
  await pick(page, 'Measured');
  await type(page, 'From whom or what', 'Tape, by the crew');
  await type(page, /^Reason/, 'Measured now.');
  await button(page, 'Record these facts').click();
  await page.getByRole('heading', { name: 'Facts for this stage' }).waitFor();
}

/** Cautions must be read; the boxes appear once the rules have answered. */
export async function tickCautions(page: Page): Promise<void> {
  await asked(page);
  for (const box of await page.getByRole('checkbox', { name: /^I have read this caution/ }).all())
    await box.check();
}

export const screwFor = async (page: Page): Promise<string> => {
  const options = await page.getByLabel('Fastener').first().locator('option').allInnerTexts();
  return options.find((each) => /wood/i.test(each)) ?? '';
};
