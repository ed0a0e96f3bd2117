// How one job of the large demonstration goes, told step by step: each step is a command by somebody
// some days later, and the next one is told knowing what the job has become.

import type { Plan, Story } from './chapter.js';
import { daysFrom, LAST_DAY } from './dice.js';
import { orderToCompletion } from './story-order.js';
import { stagesToGauge } from './story-stages.js';
import { signedOff } from './story-sign-off.js';
import { chartReplaced } from './story-troubles.js';
import { yearsAfter } from './story-claims.js';

export function* story(plan: Plan): Story {
  const { dice } = plan;
  const chosen = yield* stagesToGauge(plan);
  if (!chosen) return;
  const signed = yield* signedOff(plan, chosen);
  if (!signed || dice.chance(lostShare(plan))) return;
  const current = yield* chartReplaced(plan, signed);
  if (!current) return;
  const completed = yield* orderToCompletion(plan, current);
  if (completed) yield* yearsAfter(plan, completed);
}

/** Quotes that came to nothing stay as they are; of this year's jobs most are simply not so far. */
const lostShare = ({ opened }: Plan): number => (daysFrom(opened, LAST_DAY) < 120 ? 0.3 : 0.1);
