// The order of an invented company for the tests, as the product makes it: taken off, ordered, and
// ordered again after a change order with another take-off.

import { orderPaper, takeOffSheet, type CommandInput, type OrderPaper } from '#jobs';
import type { Story } from '../libs/jobs/given.js';
import { SITE } from '../libs/jobs/given.js';
import { ORDER as ENTERED, ready } from '../libs/jobs/after-order/order-files.js';
import { SAMPLE_CATALOGUE } from '../libs/jobs/sample.table.js';
import { HOUSE_TAKE_OFF } from '../libs/jobs/take-off/take-off-files.js';

const drawn = (ends: string): CommandInput =>
  ({
    ...HOUSE_TAKE_OFF,
    drawn: {
      ...HOUSE_TAKE_OFF.drawn,
      openings: [
        { plane: 'front', name: 'chimney', x_ft: '18', y_ft: '6', width_ft: '4', height_ft: '3' },
      ],
    },
    panel: { round_up_in: '0.5', ends: [{ edge: 'eave', add_in: ends }] },
  }) as CommandInput;

const order = (story: Story): CommandInput =>
  ({
    ...ENTERED,
    order: '1',
    delivery: '2026-03-20',
    lines: takeOffSheet(story.job, 's1', SAMPLE_CATALOGUE)?.lines,
    lengths: [{ surface: 's1', by: 'take-off', standing: 'signed', signed_by: 'Dana Field' }],
  }) as CommandInput;

const first = ready().play(drawn('1'));
const changed = first
  .play(order(first))
  .play({
    type: 'open-change-order',
    order: '1',
    reason: 'the gutter asks for two inches more at the eave',
  })
  .play(drawn('3'));

export const ORDER_EVENTS = changed.play(order(changed)).events;
export const ORDER: OrderPaper = orderPaper(ORDER_EVENTS, '1', 2, {
  company: 'Ridge and Valley Roofing (invented)',
  'person-project-manager': 'Pat Office',
  [SITE]: '12 County Road, Anytown KS',
})!;
