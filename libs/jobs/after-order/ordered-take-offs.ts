// Lengths that an order says come from a take-off: the take-off is there, still counts, and its pieces
// are the ones ordered, no more and no less.

import type { OrderedTakeOff } from '../contract/after-order-events.js';
import type { CommandOf } from '../contract/commands.js';
import type { Job } from '../job.js';
import { refuse, type Refusal } from '../refusal.js';
import { causeWords } from '../take-off/words.js';

type IssueOrder = CommandOf<'issue-order'>;

export function takeOffRefusals(job: Job, { lengths, lines }: IssueOrder): readonly Refusal[] {
  return lengths
    .filter(({ by }) => by === 'take-off')
    .flatMap(({ surface }) => {
      const name = job.surfaces[surface]?.name ?? surface;
      const taken = job.takeOffs[surface];
      if (!taken)
        return [
          refuse(
            'MOVE-21',
            `${name}: no take-off is recorded. Record one, or say that the lengths were entered.`,
            '/lengths',
          ),
        ];
      if (taken.causes.length > 0) {
        const why = [...new Set(taken.causes.map(causeWords))].join('; ');
        return [
          refuse(
            'MOVE-21',
            `${name}: take-off ${taken.number} no longer counts: ${why}. Record it again.`,
            '/lengths',
          ),
        ];
      }
      const ordered = countsOf(
        lines
          .filter((line) => line.surface === surface && line.what === 'panel')
          .map(({ length, count }) => [Number(length?.v ?? NaN), count]),
      );
      const counted = countsOf(
        taken.result.pieces.map(({ length_in, count }) => [Number(length_in), count]),
      );
      const differ = [...new Set([...counted.keys(), ...ordered.keys()])]
        .sort((p, q) => q - p)
        .filter((length) => counted.get(length) !== ordered.get(length))
        .map(
          (length) =>
            `${Number.isNaN(length) ? 'without a length' : `${length} in`}: ${counted.get(length) ?? 0} taken off, ${ordered.get(length) ?? 0} ordered`,
        );
      return differ.length === 0
        ? []
        : [
            refuse(
              'MOVE-21',
              `${name}: not the pieces of take-off ${taken.number}. ${differ.join('; ')}. Order pieces beyond it as spares, or say that the lengths were entered.`,
              '/lines',
            ),
          ];
    });
}

function countsOf(
  pieces: readonly (readonly [length: number, count: number])[],
): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const [length, count] of pieces) counts.set(length, (counts.get(length) ?? 0) + count);
  return counts;
}

/** What the order's event keeps of them. */
export const orderedTakeOffs = (job: Job, { lengths }: IssueOrder): readonly OrderedTakeOff[] =>
  lengths.flatMap(({ surface, by }) => {
    const taken = by === 'take-off' ? job.takeOffs[surface] : undefined;
    return taken
      ? [
          {
            surface,
            number: taken.number,
            measured_from: taken.asked.measured_from,
            by: taken.by,
            at: taken.at,
          },
        ]
      : [];
  });
