// When things go wrong: two people on one surface, a lost connection during a save, a session that
// ends with unsaved work, a roof without a signal. Nothing typed is lost, nothing is recorded twice.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { BARN } from '../../apps/cli/demonstration/barn.js';
import { CREW, MANAGER, OFFICE } from '../../apps/cli/demonstration/people.js';
import { WORKSHOP } from '../../apps/cli/demonstration/workshop.js';
import { axe, journey, PASSWORD, settled, withOffice } from './browser.js';

const note = (page: Page) => page.getByLabel('A new note');
const saveNote = (page: Page) => page.getByRole('button', { name: 'Save the note' }).click();
const open = async (page: Page, path: string) => {
  await page.goto(path);
  await settled(page);
};

journey('trouble', () => {
  const office = withOffice();
  const job = `/jobs/${WORKSHOP.id}`;
  const surface = /"surfaces":\[\{"id":"([^"]+)"/.exec(JSON.stringify(WORKSHOP.steps))?.[1] ?? '';
  const facts = `${job}/facts?on=${surface}`;

  test('two people on one surface: the second is told what changed, keeps what was typed, and saves', async () => {
    const [first, second] = await Promise.all([office.as(OFFICE), office.as(MANAGER)]);
    await Promise.all([open(first, facts), open(second, facts)]);
    const fill = async (page: Page, value: string) => {
      await page.getByLabel(/^Area/).fill(value);
      await page.getByRole('radio', { name: 'Told' }).check();
      await page.getByLabel('From whom or what').fill('The site foreman');
      await page.getByLabel(/^Reason/).fill('Asked again.');
    };
    const save = (page: Page) => page.getByRole('button', { name: /^Record/ }).click();
    await fill(first, '18');
    await fill(second, '19');
    await save(first);
    await first.getByRole('heading', { level: 1, name: /^Job/ }).waitFor();
    await save(second);
    const alert = second.getByRole('alert');
    await alert.getByText('Somebody changed this surface while you were working.').waitFor();
    await alert.getByText(/Recorded: Area in squares \(Olive/).waitFor();
    expect(await axe(second)).toEqual([]);
    expect(await second.getByLabel(/^Area/).inputValue()).toBe('19');
    await save(second);
    await second.getByRole('heading', { level: 1, name: /^Job/ }).waitFor();
  }, 60_000);

  test('a connection lost during a save: the try is repeated and recorded once', async () => {
    const page = await office.as(OFFICE);
    await open(page, job);
    await note(page).fill('Called the customer about the door.');
    let lost = 0;
    await page.route('**/commands', async (route) => {
      if (lost++ > 0) return route.continue();
      await route.fetch();
      return route.abort('connectionreset');
    });
    await saveNote(page);
    await page
      .getByRole('alert')
      .getByText(/The connection was lost before an answer came/)
      .waitFor();
    expect(await note(page).inputValue()).toBe('Called the customer about the door.');
    await saveNote(page);
    await page.locator('.timeline').getByText('Called the customer about the door.').waitFor();
    await page.reload();
    await settled(page);
    expect(
      await page.locator('.timeline').getByText('Called the customer about the door.').count(),
    ).toBe(1);
  }, 60_000);

  test('a session that ends with unsaved work: sign in over the page, then save', async () => {
    const page = await office.as(OFFICE);
    await open(page, job);
    await note(page).fill('Typed before the session ended.');
    await page.context().clearCookies();
    await saveNote(page);
    const dialog = page.getByRole('alertdialog', { name: 'Your session has ended' });
    await dialog.waitFor();
    expect(await axe(page)).toEqual([]);
    await dialog.getByLabel('Password').fill(PASSWORD);
    await dialog.getByRole('button', { name: 'Sign in' }).click();
    await dialog.waitFor({ state: 'detached' });
    expect(await note(page).inputValue()).toBe('Typed before the session ended.');
    await saveNote(page);
    await page.locator('.timeline').getByText('Typed before the session ended.').waitFor();
  }, 60_000);

  test('on a roof without a signal: kept on the phone, sent once when there is one', async () => {
    const page = await office.as(CREW, { viewport: { width: 390, height: 800 } });
    await open(page, `/phone/${BARN.id}/roof`);
    await page.context().setOffline(true);
    await page.getByLabel('What was found').first().fill('Rotten purlin at the north eave.');
    await page.getByRole('button', { name: 'Record the stop' }).click();
    await page.getByLabel(/^Count, damage/).fill('12 bundles, no damage, lot A1');
    await page.getByRole('button', { name: 'Save the receipt' }).click();
    await page.getByText('2 not sent yet.').waitFor();
    expect(await axe(page)).toEqual([]);
    await page.context().setOffline(false);
    await page.getByText('Everything typed here has been sent.').waitFor({ timeout: 30_000 });
    const reader = await office.as(OFFICE);
    await open(reader, `/jobs/${BARN.id}`);
    expect(await reader.locator('.timeline').getByText('Rotten purlin').count()).toBe(1);
    expect(await reader.locator('.timeline').getByText('lot A1').count()).toBe(1);
  }, 90_000);

  test('sent again with the same key after a lost answer, it stands once', async () => {
    const page = await office.as(CREW, { viewport: { width: 390, height: 800 } });
    await open(page, `/phone/${BARN.id}/roof`);
    let lost = 0;
    await page.route('**/commands', async (route) => {
      if (lost++ > 0) return route.continue();
      await route.fetch();
      return route.abort('connectionreset');
    });
    await page.getByLabel(/^Count, damage/).fill('3 coils, lot B7');
    await page.getByRole('button', { name: 'Save the receipt' }).click();
    await page.getByText('1 not sent yet.').waitFor();
    await page.getByText('Everything typed here has been sent.').waitFor({ timeout: 30_000 });
    const reader = await office.as(OFFICE);
    await open(reader, `/jobs/${BARN.id}`);
    expect(await reader.locator('.timeline').getByText('lot B7').count()).toBe(1);
  }, 90_000);
});
