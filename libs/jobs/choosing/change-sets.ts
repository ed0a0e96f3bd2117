// Every minimal set of design choices that turns an option: choices of make that stand together,
// and spacings zone by zone. A zone's outcome rests on that zone alone, so each is searched by
// itself.

import type { Frame, Frames } from './choices.js';
import { withLocals, type Cells, type Local } from './cells.js';
import { zonesOf, type Zone } from './demand.js';
import { judge } from './evaluate.js';
import { makeKeys } from './makes.js';
import { minimalOnly } from './minimal-sets.js';
import type { Option } from './options.js';
import { spacingsIn, type Kind, type Target } from './spacings.js';
import { zoneSets, type ZoneChange, type ZoneSet } from './zone-changes.js';

/** So many sets of one option are kept; more are not searched, and that is said. */
export const MOST_SETS = 64;

export interface ChangeSet {
  readonly frame: Frame;
  readonly spacings: readonly ZoneChange[];
}
export interface Found {
  readonly sets: readonly ChangeSet[];
  /** False where the budget or the number of sets ended the search. */
  readonly whole: boolean;
}

export const spacingKey = ({ kind, zone }: Pick<ZoneChange, 'kind' | 'zone'>): string =>
  `${kind} ${zone}`;
export const keysOf = ({ frame, spacings }: ChangeSet): readonly string[] => [
  ...makeKeys(frame.changes),
  ...spacings.map(spacingKey),
];

export function changeSets(cells: Cells, frames: Frames, option: Option, target: Target): Found {
  const found: ChangeSet[] = [];
  const searched: Searched[] = [];
  let whole = true;
  // What already turns it without a change of spacing needs no further choice.
  const alone: (readonly string[])[] = [];
  const known = (keys: readonly string[]): boolean =>
    alone.some((fewer) => fewer.every((key) => keys.includes(key)));
  for (const frame of frames(option, known)) {
    if (!cells.spend(0)) return { sets: minimalOnly(found, keysOf), whole: false };
    const sets =
      target === 'passes' ? passing(cells, frame, searched) : failing(cells, frame, found);
    whole &&= sets.length <= MOST_SETS;
    found.push(...sets.slice(0, MOST_SETS).map((spacings) => ({ frame, spacings })));
    if (sets.some((set) => set.length === 0)) alone.push(makeKeys(frame.changes));
  }
  return { sets: minimalOnly(found, keysOf), whole };
}

/**
 * A frame in which the option passes after changes of spacing: by failing zone, what cures it
 * alone.
 */
interface Searched {
  readonly keys: readonly string[];
  readonly cures: ReadonlyMap<string, readonly Kind[]>;
}

/** Every zone must pass: one set of each zone, in every combination. */
function passing(cells: Cells, frame: Frame, searched: Searched[]): readonly ZoneSet[] {
  if (cells.refusedOutright(frame)) return [];
  const hardest = [...zonesOf(frame.question)].sort((a, b) => a.windOutward - b.windOutward);
  if (hardest[0] && zoneSets(cells, frame, hardest[0], 'passes').length === 0) return [];
  const zones = hardest.filter((zone) => !cells.passes(frame, zone, {}));
  if (addsNothing(frame, zones, searched)) return [];
  const cures = new Map<string, readonly Kind[]>();
  let combined: readonly ZoneSet[] = [[]];
  for (const zone of zones) {
    const sets = zoneSets(cells, frame, zone, 'passes');
    if (sets.length === 0) return [];
    cures.set(
      zone.zone,
      sets.flatMap((set) => (set.length === 1 ? set.map(({ kind }) => kind) : [])),
    );
    combined = combined
      .flatMap((one) => sets.map((other) => [...one, ...other]))
      .slice(0, MOST_SETS + 1);
  }
  searched.push({ keys: makeKeys(frame.changes), cures });
  const place = (name: string): number =>
    zonesOf(frame.question).findIndex(({ zone }) => zone === name);
  return combined.map((set) => [...set].sort((a, b) => place(a.zone) - place(b.zone)));
}

/**
 * Whether every set found here would hold one found in a frame of fewer changes: the same zones
 * fail, and whatever may be changed in them cured them there alone.
 */
function addsNothing(
  frame: Frame,
  failing: readonly Zone[],
  searched: readonly Searched[],
): boolean {
  const keys = makeKeys(frame.changes);
  return searched.some(
    (before) =>
      before.keys.every((key) => keys.includes(key)) &&
      [...before.cures].every(([name, cured]) => {
        const zone = failing.find((each) => each.zone === name);
        return (
          zone !== undefined &&
          spacingsIn(frame, zone, 'passes').every(({ kind }) => cured.includes(kind))
        );
      }),
  );
}

/**
 * One zone that fails is enough. With other choices of make only spacings that fail nothing alone
 * matter.
 */
function failing(cells: Cells, frame: Frame, found: readonly ChangeSet[]): readonly ZoneSet[] {
  if (cells.refusedOutright(frame)) return [[]];
  const zones = zonesOf(frame.question);
  if (zones.some((zone) => !cells.passes(frame, zone, {}))) return [[]];
  const alone = new Set(found.filter((each) => keysOf(each).length === 1).flatMap(keysOf));
  const open = (zone: Zone): boolean =>
    spacingsIn(frame, zone, 'fails').some(
      ({ kind }) => !alone.has(spacingKey({ kind, zone: zone.zone })),
    );
  return zones.filter(open).flatMap((zone) => zoneSets(cells, frame, zone, 'fails'));
}

/**
 * The set run whole under the same rules and editions: it turns the option, and one inch less does
 * not. Of several spacings the inch less is judged in its own zone, which is enough to see that it
 * does not.
 */
export function reproduces(cells: Cells, { frame, spacings }: ChangeSet, target: Target): boolean {
  const turns = (locals: ReadonlyMap<string, Local>): boolean => {
    const question = withLocals(frame.question, locals);
    const zones = zonesOf(question);
    cells.spend(zones.length);
    return judge(question, frame.option, frame.options, zones).admissible === (target === 'passes');
  };
  if (!turns(localsOf(spacings))) return false;
  const zones = zonesOf(frame.question);
  return spacings.every((each) => {
    const less = target === 'passes' ? each.to + 1 : each.to - 1;
    const isToday = target === 'passes' ? less >= each.from : less <= each.from;
    const eased = spacings.flatMap((other) =>
      other !== each ? [other] : isToday ? [] : [{ ...other, to: less }],
    );
    if (spacings.length === 1) return !turns(localsOf(eased));
    const zone = zones.find((other) => other.zone === each.zone);
    return (
      zone !== undefined &&
      cells.passes(frame, zone, localsOf(eased).get(zone.zone) ?? {}) !== (target === 'passes')
    );
  });
}

export function localsOf(spacings: readonly ZoneChange[]): ReadonlyMap<string, Local> {
  const locals = new Map<string, Local>();
  for (const { zone, kind, to } of spacings) locals.set(zone, { ...locals.get(zone), [kind]: to });
  return locals;
}
