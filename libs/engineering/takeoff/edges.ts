// Lengths by kind of edge, and the joints where two planes meet: a ridge, hip or valley belongs to
// two planes and is trimmed once, but closed and sealed on both sides.

import type { Fault } from '../check.js';
import type { Plane, Side } from './plane.js';
import type { EdgeKind } from './request.js';

/** One length of an edge as it stands on the roof. */
export interface EdgeRun {
  readonly edge: EdgeKind;
  readonly length_ft: number;
  /** The joint's name, or the plane's where the edge is not shared. */
  readonly at: string;
}

/** Two readings of one joint may differ by an eighth of an inch. */
const JOINT_FT = 1 / 96;

/** Kinds where two planes meet, as a rule. */
const SHARED: ReadonlySet<EdgeKind> = new Set(['ridge', 'hip', 'valley']);

/** Every edge once. A joint that does not fit is a fault. */
export function edgeRuns(planes: readonly Plane[], faults: Fault[]): readonly EdgeRun[] {
  const joints = new Map<string, { side: Side; plane: string }[]>();
  const runs: EdgeRun[] = [];
  for (const plane of planes) {
    for (const side of plane.sides) {
      if (side.edge === 'none') continue;
      if (side.joint === null) {
        runs.push({ edge: side.edge, length_ft: side.length_ft, at: plane.name });
      } else {
        const met = joints.get(side.joint) ?? [];
        joints.set(side.joint, [...met, { side, plane: plane.name }]);
      }
    }
  }
  for (const [joint, met] of joints) {
    const fault = jointFault(joint, met);
    if (fault !== null) faults.push({ pointer: '/planes', message: fault });
    const length_ft = Math.max(...met.map(({ side }) => side.length_ft));
    runs.push({ edge: met[0]!.side.edge, length_ft, at: joint });
  }
  return runs;
}

function jointFault(joint: string, met: readonly { side: Side; plane: string }[]): string | null {
  const [one, other] = met;
  if (met.length !== 2 || !one || !other) {
    const where = met.map(({ plane }) => plane).join(', ');
    return `joint ${joint} must be a side of two planes; it is one of ${where}`;
  }
  if (one.side.edge !== other.side.edge) {
    const [is, isThere] = [one.side.edge, other.side.edge];
    return `joint ${joint} is ${is} on ${one.plane} and ${isThere} on ${other.plane}`;
  }
  if (Math.abs(one.side.length_ft - other.side.length_ft) <= JOINT_FT) return null;
  const [p, q] = [one.side.length_ft.toFixed(3), other.side.length_ft.toFixed(3)];
  return `joint ${joint} is ${p} ft long on ${one.plane} and ${q} ft on ${other.plane}`;
}

/** What has no joint though its kind is one where two planes meet: it is then counted in full. */
export const unjoined = (planes: readonly Plane[]): readonly string[] =>
  planes.flatMap(({ name, sides }) =>
    sides
      .filter(({ edge, joint }) => SHARED.has(edge) && joint === null)
      .map(({ edge }) => `${edge} of ${name}`),
  );

/** Length of each kind that occurs, every edge once. */
export function lengthsByKind(
  runs: readonly EdgeRun[],
): readonly { edge: EdgeKind; length_ft: number }[] {
  const sums = new Map<EdgeKind, number>();
  for (const { edge, length_ft } of runs) sums.set(edge, (sums.get(edge) ?? 0) + length_ft);
  return [...sums].map(([edge, length_ft]) => ({ edge, length_ft }));
}

/** Length of edges as the panels meet them: both sides of a joint. */
export const panelSideLength = (planes: readonly Plane[], kinds: readonly EdgeKind[]): number =>
  planes
    .flatMap(({ sides }) => sides)
    .filter(({ edge }) => kinds.includes(edge))
    .reduce((total, { length_ft }) => total + length_ft, 0);
