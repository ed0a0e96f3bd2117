// Outlines of the shapes that worked examples use, from their outside dimensions.

import type { OutlinePoint } from '#engineering';
import { inches } from '../../libs/engineering/units.js';

type Inputs = Record<string, number>;

const points = (corners: readonly (readonly [number, number])[], R: number): OutlinePoint[] =>
  corners.map(([x, y]) => ({ x: inches(x), y: inches(y), insideRadius: inches(R) }));

/** Lipped or plain C (track), web upright, top flange in positive compression. */
export function channel(i: Inputs): OutlinePoint[] {
  const t = i['t_in']!;
  const lip = i['lip_in'] ?? 0;
  const y = (i['H_in']! - t) / 2;
  const tip = lip > 0 ? i['B_in']! - t : i['B_in']! - t / 2;
  const d = lip - t / 2;
  const flanges: [number, number][] = [
    [tip, -y],
    [0, -y],
    [0, y],
    [tip, y],
  ];
  const lips: [number, number][] = [[tip, -y + d], ...flanges, [tip, y - d]];
  return points(lip > 0 ? lips : flanges, i['R_inside_in']!);
}

/** Lipped Z with lips at `lip_angle_deg` to the flange. */
export function zee(i: Inputs): OutlinePoint[] {
  const t = i['t_in']!;
  const angle = (i['lip_angle_deg']! * Math.PI) / 180;
  const setback = (t / 2) * Math.tan(angle / 2);
  const y = (i['H_in']! - t) / 2;
  const tip = i['B_in']! - t / 2 - setback;
  const d = i['lip_in']! - setback;
  const [dx, dy] = [d * Math.cos(angle), d * Math.sin(angle)];
  return points(
    [
      [-tip - dx, -y + dy],
      [-tip, -y],
      [0, -y],
      [0, y],
      [tip, y],
      [tip + dx, y - dy],
    ],
    i['R_inside_in']!,
  );
}

/** Lipped angle turned by 45 degrees, so that its weak principal axis lies level. */
export function angleOnEdge(i: Inputs): OutlinePoint[] {
  const t = i['t_in']!;
  const leg = i['leg_in']! - t;
  const d = i['lip_in']! - t / 2;
  const corners: [number, number][] = [
    [d, leg],
    [0, leg],
    [0, 0],
    [leg, 0],
    [leg, d],
  ];
  const turned = corners.map(([x, y]) => [(x - y) / Math.SQRT2, (x + y) / Math.SQRT2] as const);
  const R = i['R_inside_in']!;
  return points(turned, R).map((p, at) => (at === 2 ? p : { x: p.x, y: p.y }));
}

/** Box slit in the middle of its tension flange, which changes nothing in bending. */
export function slitBox(i: Inputs): OutlinePoint[] {
  const t = i['t_in']!;
  const [x, y] = [(i['B_in']! - t) / 2, (i['H_in']! - t) / 2];
  const slit = 1e-5;
  return points(
    [
      [-slit, -y],
      [-x, -y],
      [-x, y],
      [x, y],
      [x, -y],
      [slit, -y],
    ],
    i['R_inside_in']!,
  );
}
