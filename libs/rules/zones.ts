// What the zones of an option say together: the worst utilization, and each zone that fails.

import type { ZoneFacts } from './facts.js';
import { against, measured, recorded, text } from './figures.js';
import { fail, pass, unknown, type Figure, type Verdict } from './rule.js';

/** The highest utilization of panel and attachment over all zones; undefined where none is. */
export function worstUtilization(zones: readonly ZoneFacts[]): number | undefined {
  let worst: number | undefined;
  for (const { panel, attachment } of zones) {
    for (const part of [panel, attachment]) {
      if (part && (worst === undefined || part.utilization > worst)) worst = part.utilization;
    }
  }
  return worst;
}

/** Fails where any zone's utilization of a part is over 1, exactly; every such zone is named. */
export function eachZoneBears(part: 'panel' | 'attachment', zones: readonly ZoneFacts[]): Verdict {
  const without: string[] = [];
  const shown: Figure[] = [];
  const over: Figure[] = [];
  let worst = -Infinity;
  for (const { zone, [part]: check } of zones) {
    if (check === undefined) {
      without.push(`${part} check of zone ${zone}`);
      continue;
    }
    const { limit_state, utilization } = check;
    const one = against(`zone ${zone}: ${limit_state}`, utilization, 1, '', 3);
    shown.push(one);
    if (utilization > 1) over.push(one);
    worst = Math.max(worst, utilization);
  }
  const against1 = () => measured(recorded('limit', 1, ''), 1 - worst, '', 3);
  if (over.length > 0) {
    const which = over.map((each) => `${each.name} ${text(each)}`).join('; ');
    return fail(`${part} utilization over 1.00: ${which}`, over, against1());
  }
  if (zones.length === 0) return unknown('zones');
  if (without.length > 0) return unknown(...without);
  return pass(undefined, shown, against1());
}
