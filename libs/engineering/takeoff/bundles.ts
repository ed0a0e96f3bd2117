// Bundles: the pieces of one plane, longest first, in loads that stay under a weight and a count,
// each with the place where it lands.

import type { Fault } from '../check.js';
import type { TakeOffRequest } from './request.js';

export interface PieceLine {
  readonly length_in: number;
  readonly count: number;
}

export interface Bundle {
  readonly number: number;
  readonly plane: string;
  readonly place: string;
  readonly pieces: readonly PieceLine[];
  readonly count: number;
  readonly longest_in: number;
  readonly weight_lb: number;
}

export interface PlanePieces {
  readonly plane: string;
  readonly lines: readonly PieceLine[];
}

/** Same lengths together, longest first. */
export function pieceLines(lengths: readonly number[]): readonly PieceLine[] {
  const counts = new Map<number, number>();
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts]
    .map(([length_in, count]) => ({ length_in, count }))
    .sort((p, q) => q.length_in - p.length_in);
}

/** Numbered through all planes. No landing place, or too heavy a piece, is a fault. */
export function bundlesOf(
  asked: NonNullable<TakeOffRequest['bundles']>,
  all: readonly PlanePieces[],
  weight_plf: number,
  faults: Fault[],
): readonly Bundle[] {
  const { most_lb, most_pieces, landings } = asked;
  const bundles: Bundle[] = [];
  for (const { plane, lines } of all) {
    const place = landings.find((each) => each.plane === plane)?.place;
    if (place === undefined) {
      faults.push({
        pointer: '/bundles/landings',
        message: `no landing place is given for ${plane}`,
      });
      continue;
    }
    const heaviest = ((lines[0]?.length_in ?? 0) / 12) * weight_plf;
    if (heaviest > most_lb) {
      const message = `a piece of ${plane} weighs ${heaviest.toFixed(1)} lb, over a bundle's limit`;
      faults.push({ pointer: '/bundles/most_lb', message });
      continue;
    }
    for (const lengths of loads(lines, weight_plf, most_lb, most_pieces)) {
      bundles.push({
        number: bundles.length + 1,
        plane,
        place,
        pieces: pieceLines(lengths),
        count: lengths.length,
        longest_in: lengths[0]!,
        weight_lb: weightOf(lengths, weight_plf),
      });
    }
  }
  return bundles;
}

const weightOf = (lengths: readonly number[], weight_plf: number): number =>
  (lengths.reduce((sum, length) => sum + length, 0) / 12) * weight_plf;

function loads(
  lines: readonly PieceLine[],
  weight_plf: number,
  most_lb: number,
  most_pieces: number,
): readonly (readonly number[])[] {
  const made: number[][] = [];
  let weight = 0;
  for (const { length_in, count } of lines) {
    const each = (length_in / 12) * weight_plf;
    for (let i = 0; i < count; i++) {
      const last = made.at(-1);
      if (last && last.length < most_pieces && weight + each <= most_lb + 1e-9) {
        last.push(length_in);
        weight += each;
      } else {
        made.push([length_in]);
        weight = each;
      }
    }
  }
  return made;
}
