// The third chapter: order, acknowledgment, tear-off, change orders, deliveries in one lot or two, what
// was built, inspection and completion.

import type { OrderLine } from '#jobs/contract';
import { amount } from '../demonstration/steps.js';
import { dayPlus } from './dice.js';
import { issue, lines, ORDER, orderedLines } from './story-lines.js';
import { decidedAgain, spacedBoards, weathertight, widerSpacing } from './story-troubles.js';
import { isReroof } from './story-stages.js';
import { recorded, say, SURFACE, type Chapter, type Look, type Plan } from './chapter.js';

export function* orderToCompletion(plan: Plan, signed: Look): Chapter<Look | undefined> {
  const { dice } = plan;
  const papers = yield* weathertight(plan, yield* paperwork(plan, signed));
  if (!papers) return undefined;
  let look = yield* issue(plan, papers, lines(plan, papers, 0));
  if (dice.chance(0.08)) look = yield* acknowledgedOtherwise(look, plan);
  if (dice.chance(0.1)) look = yield* morePieces(plan);
  if (isReroof(plan)) {
    const bare = yield* tearOff(plan, look);
    if (!bare) return undefined;
    look = bare;
  }
  look = yield* delivery(plan, look);
  const spaced = yield* widerSpacing(plan, look);
  return spaced && (yield* building(plan, spaced));
}

function* paperwork({ dice, kind }: Plan, look: Look): Chapter {
  const first = yield* say(
    dice.whole(1, 20),
    'office',
    recorded(
      'document',
      'Signed proposal (invented)',
      [
        null,
        ['proposal-accepted', true],
        ['deposit-agreed', amount(0, 'usd')],
        ['quote-valid-until', dayPlus(look.day, 120)],
        ['permit', 'granted'],
        ['association-approval', 'not-asked'],
        ['truck-limit', amount(53, 'ft')],
        ['site-limit', amount(50, 'ft')],
        ['handling-limit', amount(45, 'ft')],
        ['promised-documents', ['paint', 'workmanship']],
        ['terms-on-file', ['paint', 'workmanship']],
        ['term-text-given', true],
        ['consumer-product', kind.dwelling],
      ],
      [SURFACE, ['chip-accepted', true]],
    ),
  );
  const assumed = Object.entries(first.job.facts).filter(([, { how }]) => how === 'assumed');
  if (assumed.length === 0) return first;
  const told = assumed.map(([path, fact]) => {
    const [on = '', id = '', name = ''] = path.split('/');
    return {
      on: on === 'site' || on === 'job' ? null : id,
      fact: (name || id) as 'slope',
      value: fact.value as never,
      how: 'measured' as const,
      source: 'Seen on site',
    };
  });
  return yield* say(dice.whole(1, 6), 'crew', {
    type: 'record-facts',
    reason: 'What was assumed is confirmed.',
    facts: told,
  });
}

/** The supplier confirms two pieces fewer, and then what was ordered. */
function* acknowledgedOtherwise(look: Look, { dice }: Plan): Chapter {
  const of = orderedLines(look);
  const short = of.map((line) => (line.id === 'p1' ? { ...line, count: line.count - 2 } : line));
  yield* say(dice.whole(2, 6), 'office', {
    type: 'record-acknowledgment',
    order: ORDER,
    lines: short,
    dated: look.day,
  });
  return yield* say(dice.whole(1, 5), 'office', {
    type: 'record-acknowledgment',
    order: ORDER,
    lines: [...of],
    dated: look.day,
  });
}

function* morePieces(plan: Plan): Chapter {
  const { dice } = plan;
  const open = yield* say(dice.whole(1, 10), 'manager', {
    type: 'open-change-order',
    order: ORDER,
    reason: 'The dormer was forgotten.',
  });
  if (dice.chance(0.25))
    return yield* say(dice.whole(0, 4), 'manager', {
      type: 'withdraw-change-order',
      order: ORDER,
      reason: 'There was enough on the yard.',
    });
  return yield* issue(plan, open, lines(plan, open, dice.whole(2, 6)));
}

/** In one reroof of five the deck is thinner than it was thought: hold, change order, decide again. */
function* tearOff(plan: Plan, look: Look): Chapter<Look | undefined> {
  const { dice } = plan;
  if (dice.chance(0.02)) return yield* spacedBoards(plan);
  if (!dice.chance(0.2)) {
    return yield* say(dice.whole(10, 25), 'crew', {
      type: 'record-tear-off',
      surface: SURFACE,
      finding: 'as-assumed',
      words: 'Old roof off, deck dry and as measured.',
    });
  }
  yield* say(dice.whole(10, 25), 'crew', {
    type: 'record-tear-off',
    surface: SURFACE,
    finding: 'different',
    words: 'Deck of boards under the plywood, patched in three places.',
  });
  yield* say(0, 'manager', {
    type: 'open-change-order',
    order: ORDER,
    reason: 'The deck is not as assumed.',
  });
  yield* say(
    1,
    'crew',
    recorded('measured', 'After tear-off, patched and measured', [
      SURFACE,
      ['substrate', look.job.facts[`surface/${SURFACE}/substrate`]?.value as string],
      ['deck-thickness', amount('0.719', 'in')],
      ['fastener-bite', amount('0.719', 'in')],
    ]),
  );
  const firm = yield* say(1, 'office', {
    type: 'confirm-substrate',
    surface: SURFACE,
    reason: 'The old roof is off.',
  });
  return yield* decidedAgain(plan, firm);
}

function* delivery({ dice, paper }: Plan, look: Look): Chapter {
  const of = orderedLines(look);
  const short = dice.chance(0.12) ? dice.whole(1, 4) : 0;
  const lot = `L${dice.whole(1000, 9999)}`;
  const receive = (on: string, lot_: string, counts: (line: OrderLine) => number) => ({
    type: 'record-receipt' as const,
    order: ORDER,
    on,
    stored_dry: !dice.chance(0.04),
    lots: [{ surface: SURFACE, lot: lot_ }],
    lines: of
      .filter((line) => counts(line) > 0)
      .map((line) => ({ line: line.id, count: counts(line) })),
  });
  const first = dayPlus(look.day, 25);
  const came = yield* say(
    25,
    'crew',
    receive(first, lot, (line) => line.count - (line.id === 'p1' ? short : 0)),
  );
  if (short === 0) return came;
  const days = dice.whole(5, 20);
  const refill = yield* say(
    days,
    'crew',
    receive(dayPlus(came.day, days), `${lot}-R`, (line) => (line.id === 'p1' ? short : 0)),
  );
  if (dice.chance(0.3)) return refill;
  return yield* say(dice.whole(1, 5), 'office', {
    type: 'accept-mixed-lots',
    surface: SURFACE,
    words: 'The owner signed: the back slope takes the other lot.',
    files: [paper],
  });
}

/** Where the owner did not sign for mixed lots, completion waits. */
function* building({ dice, paper }: Plan, look: Look): Chapter<Look | undefined> {
  const { after, surfaces } = look.job;
  const attachment = surfaces[SURFACE]?.stages.gauge.record?.content.attachment;
  if (!attachment) return undefined;
  yield* say(dice.whole(3, 20), 'crew', {
    type: 'record-as-built',
    surface: SURFACE,
    fastener: attachment.fastener,
    zones: attachment.zones,
    files: dice.chance(0.8) ? [paper] : [],
  });
  const punch = dice.chance(0.3)
    ? [
        {
          id: 'k1',
          words: dice.pick([
            'Touch up the rake',
            'Loose closure at the ridge',
            'Scratch by the door',
          ]),
        },
      ]
    : [];
  const days = dice.whole(1, 8);
  const inspected = yield* say(days, 'office', {
    type: 'record-inspection',
    on: dayPlus(look.day, days),
    passed: true,
    punch,
  });
  const closed =
    punch.length > 0 && dice.chance(0.95)
      ? yield* say(dice.whole(1, 12), 'crew', {
          type: 'close-punch-item',
          item: 'k1',
          words: 'Done.',
        })
      : inspected;
  const mixed =
    (after.lots[SURFACE] ?? []).length > 1 && !after.mixedLotsAccepted.includes(SURFACE);
  if (mixed) return undefined;
  return yield* say(1, 'office', { type: 'record-completion', on: dayPlus(closed.day, 1) });
}
