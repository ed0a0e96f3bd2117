// Every minimal set of design choices that turns an option: choices of make that stand together, and
// spacings zone by zone. A zone's outcome rests on that zone alone, so each is searched by itself.

import { framesOf, type Frame } from './choices.js';
import { withLocals, type Cells, type Local } from './cells.js';
import { zonesOf, type Zone } from './demand.js';
import { judge } from './evaluate.js';
import { minimalOnly } from './minimal-sets.js';
import type { Option } from './options.js';
import type { Question } from './question.js';
import { spacingsIn, type Target } from './spacings.js';
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

export const spacingKey = ({ kind, zone }: Pick<ZoneChange, 'kind' | 'zone'>): string => `${kind} ${zone}`;
const makeKeys = ({ changes }: Frame): readonly string[] => changes.map(({ key }) => key).filter((key) => key !== 'grade');
export const keysOf = ({ frame, spacings }: ChangeSet): readonly string[] => [...makeKeys(frame), ...spacings.map(spacingKey)];

export function changeSets(cells: Cells, question: Question, option: Option, target: Target): Found {
  const found: ChangeSet[] = [];
  let whole = true;
  for (const frame of framesOf(question, option)) {
    if (!cells.spend(0)) return { sets: minimalOnly(found, keysOf), whole: false };
    const keys = makeKeys(frame);
    const known = found.some(({ frame: other, spacings }) => spacings.length === 0 && makeKeys(other).every((key) => keys.includes(key)));
    if (known) continue;
    const sets = target === 'passes' ? passing(cells, frame) : failing(cells, frame, found);
    whole &&= sets.length <= MOST_SETS;
    found.push(...sets.slice(0, MOST_SETS).map((spacings) => ({ frame, spacings })));
  }
  return { sets: minimalOnly(found, keysOf), whole };
}

/** Every zone must pass: one set of each zone, in every combination. */
function passing(cells: Cells, frame: Frame): readonly ZoneSet[] {
  if (cells.refusedOutright(frame)) return [];
  let combined: readonly ZoneSet[] = [[]];
  for (const zone of zonesOf(frame.question)) {
    const sets = zoneSets(cells, frame, zone, 'passes');
    combined = combined.flatMap((one) => sets.map((other) => [...one, ...other])).slice(0, MOST_SETS + 1);
    if (combined.length === 0) return [];
  }
  return combined;
}

/** One zone that fails is enough. With other choices of make only spacings that fail nothing alone matter. */
function failing(cells: Cells, frame: Frame, found: readonly ChangeSet[]): readonly ZoneSet[] {
  if (cells.refusedOutright(frame)) return [[]];
  const zones = zonesOf(frame.question);
  if (zones.some((zone) => !cells.passes(frame, zone, {}))) return [[]];
  const alone = new Set(found.filter((each) => keysOf(each).length === 1).flatMap(keysOf));
  const open = (zone: Zone): boolean => spacingsIn(frame, zone, 'fails').some(({ kind }) => !alone.has(spacingKey({ kind, zone: zone.zone })));
  return zones.filter(open).flatMap((zone) => zoneSets(cells, frame, zone, 'fails'));
}

/** The set run whole under the same rules and editions: it turns the option, and one inch less does not. */
export function reproduces(cells: Cells, { frame, spacings }: ChangeSet, target: Target): boolean {
  const turns = (locals: ReadonlyMap<string, Local>, remembered: boolean): boolean => {
    const question = withLocals(frame.question, locals);
    const zones = zonesOf(question);
    cells.spend(zones.length);
    return judge(question, frame.option, frame.options, zones, ...(remembered ? [cells.check] : [])).admissible === (target === 'passes');
  };
  if (!turns(localsOf(spacings), false)) return false;
  return spacings.every((each) => {
    const less = target === 'passes' ? each.to + 1 : each.to - 1;
    const isToday = target === 'passes' ? less >= each.from : less <= each.from;
    const eased = spacings.flatMap((other) => (other !== each ? [other] : isToday ? [] : [{ ...other, to: less }]));
    return !turns(localsOf(eased), true);
  });
}

export function localsOf(spacings: readonly ZoneChange[]): ReadonlyMap<string, Local> {
  const locals = new Map<string, Local>();
  for (const { zone, kind, to } of spacings) locals.set(zone, { ...locals.get(zone), [kind]: to });
  return locals;
}
