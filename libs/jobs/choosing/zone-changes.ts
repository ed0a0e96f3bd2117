// What turns an option in one zone: every minimal set of spacings there, each with the value
// nearest to today's that does it. Two spacings of a zone move together only with today's choices
// of make.

import type { Frame } from './choices.js';
import type { Cells, Local } from './cells.js';
import type { Zone } from './demand.js';
import { spacingsIn, type Kind, type Spacing, type Target } from './spacings.js';

export interface ZoneChange {
  readonly zone: string;
  readonly kind: Kind;
  readonly from: number;
  readonly to: number;
  /** Whether every value beyond turns it too ("or closer", "or wider"). */
  readonly beyond: boolean;
}
/** Changes of one zone that turn the option together, and no fewer of them. */
export type ZoneSet = readonly ZoneChange[];

/** An empty set where nothing has to change; an empty list where no change of spacing helps. */
export function zoneSets(
  cells: Cells,
  frame: Frame,
  zone: Zone,
  target: Target,
): readonly ZoneSet[] {
  const turns = (local: Local): boolean =>
    cells.passes(frame, zone, local) === (target === 'passes');
  if (turns({})) return [[]];
  const spacings = spacingsIn(frame, zone, target);
  const found: ZoneSet[] = [];
  const stubborn: Spacing[] = [];
  for (const spacing of spacings) {
    const nearest = nearestOf(spacing, (value) => turns({ [spacing.kind]: value }));
    if (nearest) found.push([changeIn(zone, spacing, nearest)]);
    else stubborn.push(spacing);
  }
  const [first, second] = stubborn;
  const together = first && second && frame.changes.length === 0;
  return together ? [...found, ...pair(zone, first, second, turns)] : found;
}

interface Nearest {
  readonly value: number;
  readonly beyond: boolean;
}

const changeIn = (zone: Zone, { kind, now }: Spacing, { value, beyond }: Nearest): ZoneChange => ({
  zone: zone.zone,
  kind,
  from: now,
  to: value,
  beyond,
});

/** Two spacings, neither of which helps alone. */
function pair(
  zone: Zone,
  first: Spacing,
  second: Spacing,
  turns: (local: Local) => boolean,
): readonly ZoneSet[] {
  const with2 = (value: number) =>
    nearestOf(first, (other) => turns({ [second.kind]: value, [first.kind]: other }));
  const there = nearestOf(second, (value) => with2(value) !== undefined);
  const here = there && with2(there.value);
  return here
    ? [[changeIn(zone, first, here), changeIn(zone, second, { ...there, beyond: false })]]
    : [];
}

/** The value nearest to today's that turns it: by stretches, and by halving within one. */
function nearestOf({ stretches }: Spacing, turns: (value: number) => boolean): Nearest | undefined {
  const hit = stretches.findIndex(({ far }) => turns(far));
  const stretch = stretches[hit];
  if (!stretch) return undefined;
  const toward = stretch.near < stretch.far ? -1 : 1;
  let good = stretch.far;
  let open = stretch.near;
  while (good !== open) {
    // Rounded toward `open`, so that the middle is never the value already known to turn.
    const middle = toward < 0 ? Math.floor((good + open) / 2) : Math.ceil((good + open) / 2);
    if (turns(middle)) good = middle;
    else open = middle - toward;
  }
  return { value: good, beyond: stretches.slice(hit + 1).every(({ near }) => turns(near)) };
}
