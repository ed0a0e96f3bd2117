// A take-off by clicks: drawn with its faults named, counted while it is typed, recorded, used in the
// order; and the page in every width and state.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { BARN } from '../../apps/cli/demonstration/barn.js';
import { CREW, OFFICE } from '../../apps/cli/demonstration/people.js';
import { button, link, pick, type } from './acts.js';
import { axe, journey, settled, withOffice } from './browser.js';
import { press, write } from './keys.js';

journey('a take-off by clicks', () => {
  const office = withOffice();
  let page: Page;
  const counted = () => page.getByText(/^Counted, not recorded yet: \d+ pieces/).waitFor();

  test('the form starts from what the job knows, and names what is missing', async () => {
    page = await office.as(OFFICE);
    await page.goto(`/jobs/${BARN.id}`);
    await link(page, /^Take-off of/)
      .first()
      .click();
    await page.getByRole('heading', { level: 1, name: /: take-off$/ }).waitFor();
    expect(await page.getByLabel(/^Walls, along the eave/).inputValue()).toBe('72');
    expect(await page.getByLabel(/^Rise/).inputValue()).toBe('4');
    await button(page, 'Record the take-off').click();
    const summary = page.getByRole('alert');
    await summary.getByRole('heading', { name: 'There is a problem' }).waitFor();
    const words = await summary.innerText();
    for (const each of [
      'Say what was measured from',
      'Enter the overhang',
      'stock length of Eave trim',
    ])
      expect(words).toContain(each);
    await summary.getByRole('link', { name: 'Enter the overhang' }).click();
    expect(await page.evaluate('document.activeElement.id')).toBe('overhang_ft');
  }, 90_000);

  test('is counted while it is typed, every plane drawn with a table of the same numbers', async () => {
    await type(page, /^Measured from/, 'Roof plan, sheet A2 (invented)');
    await type(page, /^Overhang/, '1');
    await counted();
    for (const name of ['front', 'back'])
      await page.getByRole('heading', { name: `Cut list drawn on the plane: ${name}` }).waitFor();
    // 74 ft by 21 ft of run at 4 in 12 in strips of 36 in: 25 on each side, 265.6 in up the slope.
    await page
      .getByText('25 pieces all of one length; the longest is 1A, 22\'-2".')
      .first()
      .waitFor();
    await button(page, 'Add an opening').click();
    await type(page, 'What it is', 'chimney');
    for (const [at, value] of [
      ['x_ft', '71'],
      ['y_ft', '4'],
      ['width_ft', '4'],
      ['height_ft', '3'],
    ])
      await page.locator(`#openings-0-${at}`).fill(value ?? '');
    await page.getByText(/chimney must lie inside front/).waitFor();
    await page.locator('#openings-0-x_ft').fill('20');
    await counted();
    expect(await axe(page)).toEqual([]);
  }, 90_000);

  test('is recorded, read again, and used in the order', async () => {
    for (const i of [0, 1, 2])
      for (const [key, value] of [
        ['stock_in', '126'],
        ['lap_in', '2'],
        ['weight_plf', '0.9'],
      ])
        await page.locator(`#trims-${i}-${key}`).fill(value ?? '');
    await counted();
    await button(page, 'Record the take-off').click();
    await page.getByRole('heading', { name: 'Take-off 1' }).waitFor();
    const pieces = /(\d+) pieces in/.exec(await page.locator('main').innerText())?.[1];
    await settled(page);
    expect(await axe(page)).toEqual([]);
    await link(page, 'Use in the order').click();
    await page.getByRole('heading', { level: 1, name: /^Issue order/ }).waitFor();
    const table = page.getByRole('table', { name: /^Lines from take-offs/ });
    await table.waitFor();
    const rows = await table.getByRole('row').allInnerTexts();
    const panels = rows.filter((row) => row.includes('\tPanel\t'));
    const sum = panels.reduce((total, row) => total + Number(row.split('\t')[4]), 0);
    expect(String(sum)).toBe(pieces);
    expect(await page.getByLabel('They come').inputValue()).toBe('take-off');
    expect(await axe(page)).toEqual([]);
  }, 90_000);

  test('a plane corner by corner, on a narrow page; a wrong outline is named', async () => {
    await page.goto(`/jobs/${BARN.id}/take-off/roof`);
    await button(page, 'Take off again').click();
    await pick(page, 'Planes corner by corner');
    // The shape's corners are written out, with the ridge as the joint of both planes.
    expect(await page.locator('#planes-1-outline-2-joint').inputValue()).toBe('ridge');
    await counted();
    await button(page, 'Remove plane 2 this plane').click();
    await page.locator('#planes-0-outline-2-joint').fill('');
    await page.setViewportSize({ width: 320, height: 800 });
    const corners = [
      ['0', '0'],
      ['30', '10'],
      ['30', '0'],
      ['0', '10'],
    ] as const;
    for (const [j, [x, y]] of corners.entries()) {
      await page.locator(`#planes-0-outline-${j}-x_ft`).fill(x);
      await page.locator(`#planes-0-outline-${j}-y_ft`).fill(y);
    }
    for (const each of await page.getByRole('button', { name: /^Remove opening/ }).all())
      await each.click();
    await page.getByText(/sides \d and \d of .* cross or touch/).waitFor();
    await page.locator('#planes-0-outline-1-y_ft').fill('0');
    await page.locator('#planes-0-outline-2-y_ft').fill('10');
    await counted();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(320);
    expect(await axe(page)).toEqual([]);
  }, 90_000);

  test('the crew lead reads it and may not record one', async () => {
    const crew = await office.as(CREW);
    await crew.goto(`/jobs/${BARN.id}/take-off/roof`);
    await crew.getByRole('heading', { name: 'Take-off 1' }).waitFor();
    expect(await crew.getByRole('button', { name: /take off/i }).count()).toBe(0);
    expect(await crew.getByRole('link', { name: 'Use in the order' }).count()).toBe(0);
  }, 60_000);

  test('by the keyboard alone: taken off again with another overhang, and recorded', async () => {
    const alone = await office.as(OFFICE);
    await alone.goto(`/jobs/${BARN.id}/take-off/roof`);
    await alone.getByRole('heading', { name: 'Take-off 1' }).waitFor();
    await press(alone, /^Take off again$/);
    await write(alone, /^Measured from/, 'Tape on the roof (invented)');
    await write(alone, /^Overhang/, '1.5');
    await alone.getByText(/^Counted, not recorded yet: \d+ pieces/).waitFor();
    await press(alone, /^Record the take-off$/);
    await alone.getByRole('heading', { name: 'Take-off 2' }).waitFor();
    expect(await alone.locator('main').innerText()).toContain('Tape on the roof (invented)');
  }, 90_000);
});
