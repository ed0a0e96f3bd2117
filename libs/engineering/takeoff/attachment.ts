// Clips or screws by zone spacing: rows along each run of panel, in the zones that it lies under.

import type { AttachmentRequest } from './request.js';
import type { Run } from './strips.js';
import type { ZoneReach } from './zones.js';

type ZoneSpacing = AttachmentRequest['zones'][number];

/** Stands for every zone that is not named by itself. */
export const EVERY_ZONE = 'all';

export interface ZoneRows {
  readonly zone: string;
  readonly rows: number;
  readonly count: number;
}

/** A stretch of a run, along the slope, that has one spacing. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly spacing: ZoneSpacing;
}

export const spacingFor = (attachment: AttachmentRequest, zone: string): ZoneSpacing | undefined =>
  attachment.zones.find((each) => each.zone === zone) ??
  attachment.zones.find((each) => each.zone === EVERY_ZONE);

/**
 * Rows of one run, by zone. Where it lies under several zones side by side the closest spacing
 * counts, as it does where no zone is known. Each stretch of length L takes ceil(L / spacing) rows,
 * and one row closes the upper end, so that no gap is over the spacing.
 */
export function rowsOf(
  run: Run,
  reaches: readonly ZoneReach[],
  attachment: AttachmentRequest,
): readonly ZoneRows[] {
  const stretches = stretchesOf(run, reaches, attachment);
  return stretches.map(({ from, to, spacing }, i) => {
    const closing = i === stretches.length - 1 ? 1 : 0;
    const rows = Math.ceil((12 * (to - from)) / spacing.spacing_in - 1e-6) + closing;
    return { zone: spacing.zone, rows, count: rows * spacing.per_row };
  });
}

const SHORT_FT = 1e-6;

function stretchesOf(
  run: Run,
  reaches: readonly ZoneReach[],
  attachment: AttachmentRequest,
): readonly Stretch[] {
  const low = Math.min(...run.parts.map((t) => Math.min(t.below0, t.below1)));
  const high = Math.max(...run.parts.map((t) => Math.max(t.above0, t.above1)));
  const heights = [low, high, ...reaches.flatMap(({ from, to }) => [from, to])]
    .filter((y) => y >= low && y <= high)
    .sort((p, q) => p - q);
  const stretches: Stretch[] = [];
  for (let i = 1; i < heights.length; i++) {
    const [from, to] = [heights[i - 1]!, heights[i]!];
    if (to - from < SHORT_FT) continue;
    const middle = (from + to) / 2;
    const here = reaches
      .filter((each) => each.from < middle && each.to > middle)
      .flatMap(({ zone }) => spacingFor(attachment, zone) ?? []);
    lengthen(stretches, { from, to, spacing: closest(here.length > 0 ? here : attachment.zones) });
  }
  return stretches;
}

const density = ({ spacing_in, per_row }: ZoneSpacing): number => per_row / spacing_in;

const closest = (spacings: readonly ZoneSpacing[]): ZoneSpacing =>
  spacings.reduce((most, each) => (density(each) > density(most) ? each : most));

function lengthen(stretches: Stretch[], next: Stretch): void {
  const last = stretches.at(-1);
  if (last?.spacing === next.spacing) stretches[stretches.length - 1] = { ...last, to: next.to };
  else stretches.push(next);
}
