// Fasteners of all planes: by zone, the screws of clips, and stitch screws of side laps.

import type { Fault } from '../check.js';
import { rowsOf, spacingFor, type ZoneRows } from './attachment.js';
import type { LaidPlane } from './plane-take-off.js';
import type { AttachmentRequest } from './request.js';

export interface FastenerCount {
  readonly fastener: string;
  readonly zones: readonly ZoneRows[];
  readonly count: number;
  /** Screws of clips; null where the fastener is itself a screw. */
  readonly screws: number | null;
  readonly stitch_screws: number | null;
}

/** A zone of the layout over a plane that has no spacing is a fault. */
export function zoneFaults(
  laid: readonly LaidPlane[],
  attachment: AttachmentRequest | undefined,
  faults: Fault[],
): void {
  if (attachment === undefined) return;
  const zones = new Set(laid.flatMap(({ result }) => result.zones.map(({ zone }) => zone)));
  for (const zone of zones) {
    if (spacingFor(attachment, zone) !== undefined) continue;
    faults.push({ pointer: '/attachment/zones', message: `no spacing is given for zone ${zone}` });
  }
}

export function countFasteners(
  laid: readonly LaidPlane[],
  attachment: AttachmentRequest,
): FastenerCount {
  const found = new Map<string, ZoneRows>();
  for (const { runs, reaches } of laid) {
    runs.forEach((run, i) => {
      for (const { zone, rows, count } of rowsOf(run, reaches[i] ?? [], attachment)) {
        const known = found.get(zone) ?? { zone, rows: 0, count: 0 };
        found.set(zone, { zone, rows: known.rows + rows, count: known.count + count });
      }
    });
  }
  const zones = [...found.values()];
  const count = zones.reduce((sum, each) => sum + each.count, 0);
  const { fastener, screws_each, stitch_spacing_in: stitch } = attachment;
  const laps = laid.flatMap(({ sideLaps_ft }) => sideLaps_ft);
  return {
    fastener,
    zones,
    count,
    screws: screws_each === undefined ? null : count * screws_each,
    stitch_screws:
      stitch === undefined
        ? null
        : laps.reduce((sum, length) => sum + Math.ceil((12 * length) / stitch - 1e-6) + 1, 0),
  };
}
