// A job by keyboard alone, from opening it over its six stages to its order: Tab, arrows, Space, Enter and
// letters; the mouse is never used.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { ENGINEER, MANAGER, OFFICE } from '../../apps/cli/demonstration/people.js';
import { asked } from './acts.js';
import { axe, journey, settled, withOffice } from './browser.js';
import { steps } from './steps.js';
import { here, pick, press, select, write } from './keys.js';

const title = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { level: 1, name }).waitFor();
const stage = (page: Page, name: string) => title(page, `Shed roof: ${name}`);

/** Facts of the stage open: fields to write in, lists to choose from. */
async function record(
  page: Page,
  how: string,
  source: string,
  facts: readonly (readonly [field: RegExp, value: string | RegExp])[],
): Promise<void> {
  await press(page, /^Record or change facts$/);
  await title(page, /^Facts for/);
  for (const [field, value] of facts)
    await (typeof value === 'string' ? write(page, field, value) : select(page, field, value));
  await pick(page, /^Assumed$/, new RegExp(`^${how}$`));
  await write(page, /^From whom or what/, source);
  await press(page, /^Record these facts$/);
  await page.getByRole('heading', { name: 'Facts for this stage' }).waitFor();
}

/** Every caution is read and ticked; then on. */
async function saveStage(page: Page): Promise<void> {
  await asked(page);
  const left = page.getByRole('checkbox', { name: /^I have read this caution/, checked: false });
  while ((await left.count()) > 0)
    await press(page, (at) => /^I have read this caution/.test(at.name) && !at.checked, 'Space');
  await press(page, /^Save and continue$/);
}

journey('a job by keyboard', () => {
  const office = withOffice();

  test('quick keys reach the find box, the rows and a new job', async () => {
    const page = await office.as(OFFICE);
    await page.goto('/jobs');
    await settled(page);
    await page.keyboard.press('j');
    expect((await here(page)).name).toBe('2026-0102');
    await page.keyboard.press('j');
    expect((await here(page)).name).toBe('2026-0101');
    await page.keyboard.press('k');
    expect((await here(page)).name).toBe('2026-0102');
    await page.keyboard.press('/');
    expect((await here(page)).name).toMatch(/^Find/);
    await page.keyboard.type('jn');
    expect(page.url()).not.toMatch(/new$/);
    await page.keyboard.press('Tab');
    await page.keyboard.press('n');
    await page.waitForURL('**/jobs/new');
  }, 60_000);

  let page: Page;
  const step = steps(() => page);

  step('open a job', async () => {
    page = await office.as(OFFICE);
    await page.goto('/jobs/new');
    await settled(page);
    await write(page, /^Name of the job/, 'Shed by keyboard');
    await write(page, /^Customer/, 'North Meadow');
    await write(page, /^Site address/, '3 Example Road');
    await write(page, /^State or territory/, 'OH');
    await write(page, /^Name of building 1/, 'Shed');
    await write(page, /^Surface 1 of building 1/, 'Shed roof');
    await press(page, /^Value$/, 'Space');
    await press(page, /^Open the job$/);
    await title(page, /^Job 2/);
    await press(page, /^Shed roof$/);
    await stage(page, 'Style');
  });

  step('style', async () => {
    await record(page, 'Measured', 'Tape', [
      [/^Slope/, '4'],
      [/^Area/, '31.5'],
      [/^Longest panel/, '22'],
      [/^What the panels lie on/, /^Purlins/],
    ]);
    await pick(page, /^(Snap|Ribbed|Standing|Mechanical|Flush|Corrugated|Deep)/, /^Ribbed/);
    await saveStage(page);
    await stage(page, 'Coating');
    expect(await page.locator('ol.stage-list > li').first().innerText()).toMatch(/Style\s+done/);
  });

  step('coating', async () => {
    await record(page, 'Told', 'The customer, by phone', [
      [/^Corrosivity/, /^C2/],
      [/^Salt or brackish water/, /^None/],
      [/^Animal confinement/, /^No$/],
      [/^Copper or lead above/, /^No$/],
      [/^Mortar, stucco/, /^No$/],
    ]);
    await pick(page, /^(Steel|Aluminum)/, /^Steel/);
    await pick(page, /^(SMP|PVDF|Polyester|Bare|Unpainted)/, /^SMP/);
    await select(page, /^Metallic coating/, /^AZ50/);
    await select(page, /^Color group/, /^Earth tone/);
    await saveStage(page);
    await stage(page, 'Hazards');
  });

  step('hazards', async () => {
    await record(page, 'Document', 'Letter of the county (invented)', [
      [/^Exposure category/, /^C$/],
      [/^Basic wind speed/, '105'],
      [/^Ground snow load/, '20'],
      [/^Basis of the ground snow load/, /^Service level, 50/],
      [/^Mean roof height/, '19'],
      [/^Least horizontal/, '40'],
      [/^Other horizontal/, '72'],
      [/^Roof shape/, /^Gable/],
      [/^Risk category/, /^I$/],
      [/^Enclosure/, /^Enclosed/],
      [/^Is any side open\?/, /^No$/],
      [/^May large doors/, /^No$/],
      [/^Does it drain or slide/, /^No$/],
    ]);
    await pick(page, /^(Entered|Calculated)$/, /^Entered$/);
    for (const uplift of ['-24', '-38', '-55']) {
      await write(page, /^Inward/, '16');
      await write(page, /^Uplift/, uplift);
    }
    await write(page, /^From which document/, 'County table for barns (invented)');
    await write(page, /^Date of that document/, '2 Nov 2026');
    await pick(page, /^(Entered|Calculated)$/, /^Entered$/);
    await write(page, /^Design roof snow load/, '18');
    await pick(page, /^(Strength|Service) level/, /^Service level/);
    await write(page, /^From which document/, 'Letter of the county (invented)');
    await write(page, /^Date of that document/, '2 Nov 2026');
    await saveStage(page);
    await stage(page, 'Substrate');
  });

  step('substrate', async () => {
    await record(page, 'Measured', 'Tape, by the crew', [
      [/^Spacing of supports/, '24\n23.5\n24.25'],
      [/^Specific gravity/, '0.42'],
      [/^How deep the fastener bites/, '1.25'],
      [/^Is there an old roof/, /^No$/],
      [/^Contact with treated lumber/, /^None/],
      [/^Metal of the fasteners/, /^Galvanized/],
      [/^Was the framing looked at/, /^Yes$/],
      [/^Air inside/, /^Unheated/],
      [/^Condensation control/, /^Absorbing fleece/],
      [/^Underlayment/, 'none on purlins'],
    ]);
    await saveStage(page);
    await stage(page, 'Gauge');
  });

  step('gauge: the recommended one', async () => {
    await select(page, /^Fastener$/, /wood/i);
    for (const [zone, spacing] of [
      ['1', '9'],
      ['2', '9'],
      ['3', '6'],
    ] as const)
      await write(page, new RegExp(`^Zone ${zone}: screws across the panel`), spacing);
    await page.getByRole('table', { name: /^Comparison of gauges/ }).waitFor();
    await pick(page, /^Take /, ({ row }) => row.includes('Recommended'));
    await saveStage(page);
    await stage(page, 'Engineer sign-off');
  });

  step('the manager asks the engineer', async () => {
    const manager = await office.as(MANAGER);
    await manager.goto('/spanning');
    await settled(manager);
    await press(
      manager,
      ({ name, row }) => name === 'Shed roof' && row.includes('Shed by keyboard'),
    );
    await stage(manager, 'Engineer sign-off');
    await select(manager, /^Engineer$/, new RegExp(`^${ENGINEER.name}$`));
    await write(manager, /^What the engineer is asked/, 'Roof panels and screws on the purlins.');
    await press(manager, /^Ask the engineer$/);
    await manager.getByText('Waiting for the engineer').first().waitFor();
  });

  step('to the order: unsigned, it is refused with the rule that says so', async () => {
    await press(page, /^Job 2\d{3}-\d{4}$/);
    await title(page, /^Job 2/);
    await press(page, /^Issue an order$/);
    await title(page, 'Issue order 1');
    await settled(page);
    await write(page, /^Supplier$/, 'Sample Panels (invented)');
    await write(page, /^Landing place/, 'On the ground, by the north wall');
    await select(page, /^They are$/, /^On hold/);
    await write(page, /^Length of a piece/, '264');
    await write(page, /^How many/, '30');
    const rules = page.getByRole('region', { name: 'What the rules say' });
    await rules.getByText('Every required sign-off stands').waitFor();
    expect(await axe(page)).toEqual([]);
  });
});
