// Troubles of the large demonstration around the order: a load chart replaced in the middle of a job,
// boards with gaps under the old roof, supports wider than measured after the delivery, a weathertightness
// document whose warrantor has not approved.

import { dayPlus } from './dice.js';
import { issue, lines, ORDER, orderedLines } from './story-lines.js';
import { signedOff } from './story-sign-off.js';
import { gaugeFrom } from './story-stages.js';
import { recorded, say, SURFACE, type Chapter, type Look, type Plan } from './chapter.js';

/** The gauge again on today's facts, the engineer again, and another revision of the order. */
export function* decidedAgain(plan: Plan, look: Look): Chapter<Look | undefined> {
  const chosen = yield* gaugeFrom(plan, look, 0, 'Decided again on what was found.');
  const signed = chosen && (yield* signedOff(plan, chosen));
  if (!signed) return undefined;
  const renewed = yield* say(
    0,
    'office',
    recorded('document', 'Quote renewed for what changed (invented)', [
      null,
      ['quote-valid-until', dayPlus(signed.day, 60)],
    ]),
  );
  return yield* issue(plan, renewed, lines(plan, renewed, morePieces(plan, look)));
}

/** Panels that an earlier change order added stay on the order. */
function morePieces(plan: Plan, look: Look): number {
  const ordered = orderedLines(look).find(({ id }) => id === 'p1')?.count ?? 0;
  const first = lines(plan, look, 0).find(({ id }) => id === 'p1')?.count ?? 0;
  return Math.max(0, ordered - first);
}

/** Where the panel's chart is another one since the gauge was selected, gauge and engineer again. */
export function* chartReplaced(plan: Plan, signed: Look): Chapter<Look | undefined> {
  const decided = signed.job.surfaces[SURFACE]?.stages.gauge.record?.catalogue_edition.number;
  if (decided === undefined || !signed.chartReplaced(plan.kind.profile, decided)) return signed;
  const noted = yield* say(1, 'manager', {
    type: 'add-note',
    about: SURFACE,
    words:
      "The panel maker replaced this panel's load chart; what was selected is looked at again.",
  });
  const chosen = yield* gaugeFrom(plan, noted, 0, "The panel's load chart was replaced.");
  return chosen && (yield* signedOff(plan, chosen));
}

/** Found by the crew once the panels are there: gauge and sign-off no longer count. */
export function* widerSpacing(plan: Plan, look: Look): Chapter<Look | undefined> {
  const { dice } = plan;
  const measured = look.job.facts[`surface/${SURFACE}/support-spacings`]?.value as
    readonly { readonly v: string; readonly zone?: string }[] | undefined;
  if (!measured || !dice.chance(0.05)) return look;
  const more = dice.whole(2, 8);
  const wider = measured.map((each) => ({ ...each, v: String(Number(each.v) + more) }));
  yield* say(
    dice.whole(1, 6),
    'crew',
    recorded('measured', 'Measured again with the panels on site: wider than on the list', [
      SURFACE,
      ['support-spacings', wider],
    ]),
  );
  yield* say(0, 'manager', {
    type: 'open-change-order',
    order: ORDER,
    reason: 'The supports are wider apart than measured before.',
  });
  const firm = yield* say(1, 'office', {
    type: 'confirm-substrate',
    surface: SURFACE,
    reason: 'Measured again by the crew.',
  });
  return yield* decidedAgain(plan, firm);
}

/** The plane is on hold: nothing that lies on a solid deck may be laid, and the style is open again. */
export function* spacedBoards({ dice }: Plan): Chapter<undefined> {
  yield* say(dice.whole(10, 25), 'crew', {
    type: 'record-tear-off',
    surface: SURFACE,
    finding: 'different',
    words:
      'Boards with gaps under the old roof, no plywood. Dried in, nothing laid; office called.',
  });
  yield* say(
    0,
    'crew',
    recorded('measured', 'With the old roof off', [
      SURFACE,
      ['substrate', 'spaced-boards'],
      ['support-spacings', [{ v: '24' }, { v: '23.5' }]],
    ]),
  );
  yield* say(1, 'office', {
    type: 'add-note',
    about: SURFACE,
    words: 'The owner decides between a new deck and another panel; the crew waits.',
  });
  return undefined;
}

/** Promised to some halls; half of the warrantors approve within weeks, and for the rest nothing is ordered. */
export function* weathertight({ dice, kind }: Plan, look: Look): Chapter<Look | undefined> {
  if (kind.id !== 'hall' || !dice.chance(0.12)) return look;
  const promised = ['paint', 'workmanship', 'weathertightness'];
  const asked = yield* say(
    dice.whole(1, 4),
    'office',
    recorded('document', 'Application for the weathertightness document (invented)', [
      null,
      ['promised-documents', promised],
      ['terms-on-file', promised],
      ['weathertightness-approved', false],
    ]),
  );
  if (!dice.chance(0.5)) {
    yield* say(dice.whole(10, 40), 'manager', {
      type: 'add-note',
      about: null,
      words: 'The warrantor has not approved the eave detail; nothing is ordered until it does.',
    });
    return undefined;
  }
  return yield* say(
    dice.whole(10, 40),
    'office',
    recorded('document', `Approval of the details, asked on ${asked.day} (invented)`, [
      null,
      ['weathertightness-approved', true],
    ]),
  );
}
