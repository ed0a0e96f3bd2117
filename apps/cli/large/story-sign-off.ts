// The second chapter: the engineer approves, approves with a condition, declines and is asked again,
// leaves or loses the license before answering, or takes an approval back.

import { signOffRequired } from '#jobs';
import type { Attachment } from '#jobs/contract';
import { dayPlus } from './dice.js';
import { isThere, onDuty, STAFF } from './staff.js';
import { gaugeFrom, jurisdictionOf, type Chosen } from './story-stages.js';
import { say, SURFACE, type Chapter, type Look, type Plan } from './chapter.js';

/** undefined where it went no further. */
export function* signedOff(plan: Plan, chosen: Chosen): Chapter<Look | undefined> {
  const surface = chosen.look.job.surfaces[SURFACE];
  if (!surface || signOffRequired(surface).length === 0) return chosen.look;
  const { dice } = plan;
  const asked = yield* ask(plan, chosen.look, plan.turn);
  const first = dice.next();
  if (first < 0.08) {
    const declined = yield* answer(plan, asked, 'decline');
    const closer = yield* gaugeFrom(
      plan,
      declined,
      chosen.tried + 1,
      'The engineer declined: closer attachment.',
    );
    if (!closer) return undefined;
    return yield* approved(plan, yield* ask(plan, closer.look, plan.turn));
  }
  if (first < 0.14) return yield* conditioned(plan, asked, chosen);
  if (first < 0.16) return yield* lapsed(plan, asked);
  const approval = yield* approved(plan, asked);
  if (first > 0.985) {
    const revoked = yield* say(
      dice.whole(5, 40),
      'engineer',
      {
        type: 'revoke-sign-off',
        request: newest(approval),
        reason: 'A drawing came that I had not seen.',
      },
      engineerOf(approval),
    );
    return yield* approved(plan, yield* ask(plan, revoked, plan.turn + 1));
  }
  return approval;
}

/** Approved with the next closer attachment; the gauge is then confirmed again as the engineer said. */
function* conditioned(plan: Plan, asked: Look, { tried }: Chosen): Chapter {
  const attachment = plan.kind.attachments[tried + 1];
  const option = asked.job.surfaces[SURFACE]?.stages.gauge.record?.content.option;
  const engineer = STAFF.find(({ id }) => id === engineerOf(asked));
  const days = plan.dice.whole(2, 20);
  const there = engineer && isThere(engineer, dayPlus(asked.day, days));
  if (!attachment || !option || !there || asked.recommend(attachment) === null)
    return yield* approved(plan, asked);
  yield* answer(plan, asked, 'approve-with-conditions', days, attachment);
  return yield* say(plan.dice.whole(0, 4), 'office', {
    type: 'select-gauge',
    surface: SURFACE,
    option,
    attachment,
    why: 'The sheet that the engineer approved.',
    reason: 'The engineer approved with closer attachment.',
  });
}

/** The license ran out while the packet lay there: it signs nothing, and another engineer is asked. */
function* lapsed(plan: Plan, asked: Look): Chapter {
  const name = STAFF.find(({ id }) => id === engineerOf(asked))?.name ?? '';
  const noted = yield* say(plan.dice.whole(3, 20), 'manager', {
    type: 'add-note',
    about: SURFACE,
    words: `The license of ${name} in ${jurisdictionOf(plan)} ran out before the answer; another engineer is asked.`,
  });
  return yield* approved(plan, yield* ask(plan, noted, plan.turn + 1));
}

/** Where the one who was asked has left by then, another is asked. */
function* approved(plan: Plan, waiting: Look): Chapter {
  const days = plan.dice.whole(2, 35);
  const engineer = STAFF.find(({ id }) => id === engineerOf(waiting));
  if (!engineer || isThere(engineer, dayPlus(waiting.day, days)))
    return yield* answer(plan, waiting, 'approve', days);
  return yield* answer(plan, yield* ask(plan, waiting, plan.turn, days + 20), 'approve');
}

function* ask({ dice }: Plan, look: Look, turn: number, days = dice.whole(0, 6)): Chapter {
  const request = `r${Object.keys(look.job.signOffs).length + 1}`;
  const engineer = onDuty('engineer', dayPlus(look.day, days), turn);
  return yield* say(days, 'manager', {
    type: 'request-sign-off',
    request,
    surfaces: [SURFACE],
    engineer: { id: engineer.id },
    scope: 'Panels and their attachment, by zone.',
    exclusions: 'The frame and its bracing.',
    expires: dayPlus(look.day, days + 200),
  });
}

function* answer(
  plan: Plan,
  look: Look,
  how: 'approve' | 'approve-with-conditions' | 'decline',
  days = plan.dice.whole(2, 35),
  attachment?: Attachment,
): Chapter {
  const request = newest(look);
  const engineer = engineerOf(look);
  const name = STAFF.find(({ id }) => id === engineer)?.name ?? '';
  return yield* say(
    days,
    'engineer',
    {
      type: 'answer-sign-off',
      request,
      answer: how,
      license: {
        name: `${name} (invented)`,
        number: `EX-${engineer.slice(-4)}`,
        jurisdiction: jurisdictionOf(plan),
        expires: dayPlus(look.day, 400),
      },
      statement:
        how === 'approve'
          ? 'I reviewed the packet named by its digest and approve it as listed.'
          : how === 'decline'
            ? 'I do not approve this.'
            : 'I reviewed the packet named by its digest and approve it under the condition stated.',
      ...(attachment
        ? { conditions: { words: 'Attach as listed here, closer than asked.', attachment } }
        : {}),
      ...(how === 'decline' ? { reasons: 'The corner zone has no reserve; attach closer.' } : {}),
    },
    engineer,
  );
}

/** Requests are numbered as they are made. */
const newest = ({ job }: Look): string => `r${Object.keys(job.signOffs).length}`;
const engineerOf = (look: Look): string => look.job.signOffs[newest(look)]?.engineer ?? '';
