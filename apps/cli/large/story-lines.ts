// The order of a story: its lines from the job's own facts, and its issue.

import type { OrderLine } from '#jobs/contract';
import { amount } from '../demonstration/steps.js';
import { dayPlus } from './dice.js';
import { say, SURFACE, type Chapter, type Look, type Plan } from './chapter.js';

export const ORDER = '1';

const panels = (look: Look): { readonly count: number; readonly inches: number } => {
  const amountOf = (fact: string) =>
    Number(
      (look.job.facts[`surface/${SURFACE}/${fact}`]?.value as { v: string } | undefined)?.v ?? 0,
    );
  const width = Number(look.job.surfaces[SURFACE]?.stages.style.record?.content.width ?? 12);
  const inches = amountOf('longest-piece') * 12;
  return { inches, count: Math.ceil((amountOf('area') * 100 * 144) / (inches * width)) };
};

export function lines({ kind }: Plan, look: Look, more: number): readonly OrderLine[] {
  const { count, inches } = panels(look);
  const gauge = look.job.surfaces[SURFACE]?.stages.gauge.record?.content;
  return [
    {
      id: 'p1',
      surface: SURFACE,
      what: 'panel',
      words: `${kind.profile}, ${gauge?.gauge ?? ''} gauge`,
      length: amount(inches, 'in'),
      count: count + more,
    },
    {
      id: 'f1',
      surface: SURFACE,
      what: 'fastener',
      words: gauge?.attachment.fastener ?? 'fastener',
      count: count * 20,
    },
    {
      id: 't1',
      surface: SURFACE,
      what: 'trim',
      words: 'Trim, 10 ft 6 in',
      length: amount(126, 'in'),
      count: 12,
    },
  ];
}

export function* issue({ dice }: Plan, look: Look, of: readonly OrderLine[]): Chapter {
  const days = dice.whole(0, 5);
  return yield* say(days, 'office', {
    type: 'issue-order',
    order: ORDER,
    supplier: 'Example Panel Works (invented)',
    date: dayPlus(look.day, days),
    lines: [...of],
    lengths: [{ surface: SURFACE, by: 'entered', standing: 'signed', signed_by: 'crew lead' }],
    landing_place: 'driveway, on timbers',
    delivery: dayPlus(look.day, days + 30),
  });
}

export const orderedLines = (look: Look): readonly OrderLine[] =>
  look.job.after.orders[ORDER]?.revisions.at(-1)?.lines ?? [];
