// For tests: the space of choices of one option, searched by trying every value of every variable
// with the whole evaluation. Slow, and shares nothing with the search but what the choices are.

import type { Frame } from './choices.js';
import { makeKeys } from './makes.js';
import { withLocals, type Local } from './cells.js';
import { spacingKey } from './change-sets.js';
import { zonesOf } from './demand.js';
import { judge } from './evaluate.js';
import { spacingsIn, type Kind, type Target } from './spacings.js';

interface Variable {
  readonly key: string;
  readonly zone: string;
  readonly kind: Kind;
  readonly values: readonly number[];
}

export interface Space {
  readonly keys: readonly string[];
  /** Whether the option can be turned with changes of these variables alone. */
  readonly turns: (keys: readonly string[]) => boolean;
}

export function spaceOf(frames: readonly Frame[], target: Target): Space {
  const known = new Map<string, boolean>();
  const variables = new Map(frames.map((frame) => [frame, variablesOf(frame, target)]));
  const outcome = (frame: Frame, locals: ReadonlyMap<string, Local>): boolean => {
    const key = `${frames.indexOf(frame)} ${JSON.stringify([...locals])}`;
    const found = known.get(key) ?? turned(frame, locals, target);
    known.set(key, found);
    return found;
  };
  return {
    keys: [
      ...new Set(
        frames.flatMap((frame) => [
          ...makeKeys(frame.changes),
          ...(variables.get(frame) ?? []).map(({ key }) => key),
        ]),
      ),
    ],
    turns: (keys) =>
      frames
        .filter(({ changes }) => makeKeys(changes).every((key) => keys.includes(key)))
        .some((frame) => {
          const free = (variables.get(frame) ?? []).filter(({ key }) => keys.includes(key));
          return assignments(free, frame.changes.length === 0).some((locals) =>
            outcome(frame, locals),
          );
        }),
  };
}

function turned(frame: Frame, locals: ReadonlyMap<string, Local>, target: Target): boolean {
  const question = withLocals(frame.question, locals);
  return (
    judge(question, frame.option, frame.options, zonesOf(question)).admissible ===
    (target === 'passes')
  );
}

function variablesOf(frame: Frame, target: Target): readonly Variable[] {
  return zonesOf(frame.question).flatMap((zone) =>
    spacingsIn(frame, zone, target).map(({ kind, stretches }) => {
      const ends = stretches.flatMap(({ near, far }) => [near, far]);
      const [low, high] = [Math.min(...ends), Math.max(...ends)];
      return {
        key: spacingKey({ kind, zone: zone.zone }),
        zone: zone.zone,
        kind,
        values: Array.from({ length: high - low + 1 }, (_, i) => low + i),
      };
    }),
  );
}

/**
 * Every way to set the free variables, each also left as it is; two of one zone only where `pairs`
 * says so.
 */
function assignments(
  free: readonly Variable[],
  pairs: boolean,
): readonly ReadonlyMap<string, Local>[] {
  let all: readonly ReadonlyMap<string, Local>[] = [new Map()];
  for (const { zone, kind, values } of free) {
    all = all.flatMap((set) => [
      set,
      ...(set.has(zone) && !pairs
        ? []
        : values.map((value) => new Map(set).set(zone, { ...set.get(zone), [kind]: value }))),
    ]);
  }
  return all;
}
