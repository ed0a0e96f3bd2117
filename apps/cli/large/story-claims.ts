// The last chapter: registration in time or late, warranty documents, a new owner, and years later a
// claim with its readings and a decision by a person.

import type { CommandInput } from '#jobs/contract';
import { dayPlus } from './dice.js';
import { say, SURFACE, type Chapter, type Look, type Plan } from './chapter.js';

const WINDOW_DAYS = 60;
const DISCLOSED = ['1', '2', '3', '4', '5', '7', '9'].map((item) => ({
  item,
  words: 'As the document says.',
}));
const TERM = {
  PVDF: { years: 35, fade: '5', chalk: '8' },
  SMP: { years: 25, fade: '7', chalk: '6' },
} as const;

export function* yearsAfter(plan: Plan, completed: Look): Chapter {
  const { dice } = plan;
  const filing = dice.chance(0.08) ? WINDOW_DAYS + dice.whole(3, 40) : dice.whole(2, 45);
  const registered = yield* say(filing, 'office', {
    type: 'file-registration',
    kind: 'paint',
    on: dayPlus(completed.day, filing),
    window_days: WINDOW_DAYS,
  });
  const open = Object.values(registered.job.after.punch).some((item) => item.open);
  if (open) return registered;
  const paint = yield* say(dice.whole(0, 10), 'office', paintDocument(plan, registered));
  const issued = dice.chance(0.95)
    ? yield* say(dice.whole(0, 5), 'office', workmanshipDocument(plan, paint))
    : paint;
  if (dice.chance(0.05)) {
    const days = dice.whole(300, 1500);
    yield* say(days, 'office', {
      type: 'transfer-warranty',
      document: '1',
      to: 'The next owner (invented)',
      on: dayPlus(issued.day, days),
      notice_given: dice.chance(0.7),
    });
  }
  return dice.chance(0.09) ? yield* claim(plan, issued) : issued;
}

/** The office's own; where it was forgotten the job stays open. */
function workmanshipDocument({ paper }: Plan, { job, day }: Look): CommandInput {
  const { exclusions_triggered = [] } = job.after.warranties['1'] ?? {};
  return {
    type: 'issue-warranty',
    document: 'w2',
    kind: 'workmanship',
    title: 'limited',
    warrantor: 'Example Metal Roofing (demonstration)',
    surfaces: [SURFACE],
    start: job.after.completedOn ?? day,
    years: 2,
    terms: paper,
    full_tests_not_met: ['remedy free of charge within a reasonable time'],
    disclosures: DISCLOSED,
    exclusions_named: [...exclusions_triggered],
    transfer: 'none',
  };
}

function paintDocument({ paper }: Plan, look: Look): CommandInput {
  const system =
    look.job.surfaces[SURFACE]?.stages.coating.record?.content.paint_system === 'SMP'
      ? 'SMP'
      : 'PVDF';
  const { years, fade, chalk } = TERM[system];
  const { after } = look.job;
  const late = after.registrations.paint?.late_days ?? 0;
  const wet = Object.values(after.orders).some(({ receipts }) =>
    receipts.some(({ stored_dry }) => !stored_dry),
  );
  return {
    type: 'issue-warranty',
    document: '1',
    kind: 'paint',
    title: 'limited',
    warrantor: 'Example Coil Coating (invented)',
    surfaces: [SURFACE],
    start: after.completedOn ?? look.day,
    years,
    terms: paper,
    fade: {
      limit: fade,
      scale: Number(look.day.slice(0, 4)) < 2021 ? 'not named' : 'Hunter',
      years,
    },
    chalk: { least: chalk, years },
    full_tests_not_met: ['remedy free of charge within a reasonable time'],
    disclosures: DISCLOSED,
    transfer: 'once',
    exclusions_named: [
      ...(late > 0 ? [`paint registered ${late} days late`] : []),
      ...((after.lots[SURFACE] ?? []).length > 1
        ? [`${look.job.surfaces[SURFACE]?.name}: more than one lot`]
        : []),
      ...(wet ? ['stored wet'] : []),
    ],
  };
}

function* claim({ dice, paper }: Plan, issued: Look): Chapter {
  const kind = dice.pick(['fade', 'chalk', 'fade', 'wind', 'leak', 'hail'] as const);
  const days = dice.whole(400, 2600);
  const notice = dayPlus(issued.day, days);
  const opened = yield* say(days, 'office', {
    type: 'open-claim',
    claim: '1',
    surface: SURFACE,
    kind,
    document: '1',
    notice,
    files: dice.chance(0.7) ? [paper] : [],
    lot: issued.job.after.lots[SURFACE]?.[0] ?? 'not known',
    words: `The owner writes about ${kind}.`,
  });
  if (kind === 'fade')
    yield* say(
      dice.whole(5, 40),
      'reviewer',
      colorReading(dice.chance(0.6), dice.whole(2, 12), dayPlus(opened.day, 5)),
    );
  if (kind === 'chalk') {
    yield* say(dice.whole(5, 40), 'reviewer', {
      type: 'record-reading',
      claim: '1',
      on: dayPlus(opened.day, 5),
      what: 'chalk',
      rating: String(dice.whole(4, 9)),
      washed: dice.chance(0.3),
      instrument: 'tape test',
    });
  }
  const decision = dice.pick(['accepted', 'accepted-in-part', 'declined'] as const);
  return yield* say(dice.whole(10, 60), 'reviewer', {
    type: 'decide-claim',
    claim: '1',
    decision,
    clause: 'Section 2 of the document (invented)',
    reason: 'Decided on the readings, the term and what the record shows (invented).',
  });
}

const colorReading = (washed: boolean, lighter: number, on: string): CommandInput => ({
  type: 'record-reading',
  claim: '1',
  on,
  what: 'color',
  scale: 'Hunter',
  illuminant: 'C',
  observer: '2',
  washed,
  retained: { L: '42.1', a: '3.2', b: '6.4' },
  weathered: { L: (42.1 + lighter).toFixed(1), a: '3.0', b: '6.9' },
  instrument: 'colorimeter 3',
  calibrated: on,
});
