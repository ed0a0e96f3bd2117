// The alarm: an administrator verifies the record by a click, somebody edits the database behind the
// service's back, and every page of every person says so until the record holds again.

import { expect, test } from '@jest/globals';
import { newClient } from '#ledger';
import {
  ADMINISTRATOR,
  DEMONSTRATION,
  OFFICE,
  REVIEWER,
} from '../../apps/cli/demonstration/people.js';
import { axe, journey, settled, withOffice } from './browser.js';

const SHOTS = process.env['ALARM_SHOTS'];

journey('the record is altered', () => {
  const office = withOffice();

  test('and every page says so, with the position; restored, it holds again', async () => {
    const page = await office.as(ADMINISTRATOR);
    const shot = async (name: string) => {
      if (SHOTS) await page.screenshot({ path: `${SHOTS}/${name}.png`, fullPage: true });
    };
    const verify = async (words: string) => {
      await page.goto('/admin/health');
      await settled(page);
      await page.getByRole('button', { name: 'Verify the record now' }).click();
      await page.getByText(words).first().waitFor({ timeout: 20_000 });
      await page.reload();
      await settled(page);
    };
    await verify('The record holds.');
    await shot('sound');

    const owner = newClient({ connectionString: office.database.ownerUrl });
    await owner.connect();
    const edit = (from: string, to: string) =>
      owner.query(
        `SET session_replication_role = replica;
         UPDATE ledger.event SET body = replace(body, '${from}', '${to}')
         WHERE log_id = '${DEMONSTRATION.company}' AND pos = 12`,
      );
    await edit('"role":"', '"r0le":"');
    await verify('Alarm: the record does not hold.');
    expect(await page.getByText('The first bad position is 12').count()).toBeGreaterThan(0);
    expect(await axe(page)).toEqual([]);
    await shot('damaged');
    for (const who of [OFFICE, REVIEWER]) {
      const theirs = await office.as(who);
      await theirs.goto('/jobs');
      await settled(theirs);
      const alarm = theirs.locator('.record-alarm');
      await alarm.waitFor();
      expect(await alarm.innerText()).toContain('Tell your administrator now.');
      if (SHOTS && who === OFFICE) await theirs.screenshot({ path: `${SHOTS}/jobs.png` });
    }

    await edit('"r0le":"', '"role":"');
    await owner.end();
    await verify('The record holds.');
    expect(await page.locator('.record-alarm').count()).toBe(0);
    for (const name of ['readings', 'feed']) {
      await page.goto(`/admin/${name}`);
      await settled(page);
      await shot(name);
    }
  }, 120_000);

  test('a token for the feed is made, shown once, and ended', async () => {
    const page = await office.as(ADMINISTRATOR);
    await page.goto('/admin/feed');
    await settled(page);
    await page.getByRole('button', { name: 'Make the token' }).click();
    await page.getByText('Say what it is for').first().waitFor();
    await page.getByLabel('Program').fill('Bookkeeping (invented)');
    await page.getByRole('button', { name: 'Make the token' }).click();
    const shown = page.getByText('Shown once:');
    await shown.waitFor();
    const token = /Shown once: ([A-Za-z0-9_-]{43})/.exec(await shown.innerText())?.[1] ?? '';
    const ask = () =>
      fetch(`${office.address}/api/log/events?limit=1`, {
        headers: { authorization: `Bearer ${token}` },
      });
    expect((await ask()).status).toBe(200);
    expect(await axe(page)).toEqual([]);
    if (SHOTS) await page.screenshot({ path: `${SHOTS}/token.png`, fullPage: true });
    await page.getByRole('button', { name: 'End the token for Bookkeeping' }).click();
    await page.getByText('Ended').first().waitFor();
    expect((await ask()).status).toBe(401);
  }, 60_000);
});
