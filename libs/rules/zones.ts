// What the zones of an option say together: the worst utilization, and each zone that fails.

import type { ZoneFacts } from './facts.js';
import { against, measured, recorded, text } from './figures.js';
import { fail, pass, unknown, type Verdict } from './rule.js';

/** The highest utilization of panel and attachment over all zones; undefined where none is. */
export function worstUtilization(zones: readonly ZoneFacts[]): number | undefined {
  const all = zones.flatMap(({ panel, attachment }) =>
    [panel, attachment].flatMap((part) => (part === undefined ? [] : [part.utilization])),
  );
  return all.length === 0 ? undefined : Math.max(...all);
}

/** Fails where any zone's utilization of a part is over 1, exactly; every such zone is named. */
export function eachZoneBears(part: 'panel' | 'attachment', zones: readonly ZoneFacts[]): Verdict {
  const without = zones.filter((zone) => zone[part] === undefined).map((zone) => zone.zone);
  const checked = zones.flatMap(({ zone, [part]: check }) => (check ? [{ zone, ...check }] : []));
  const shown = checked.map(({ zone, limit_state, utilization }) =>
    against(`zone ${zone}: ${limit_state}`, utilization, 1, '', 3),
  );
  const worst = Math.max(...checked.map((each) => each.utilization));
  const against1 = () => measured(recorded('limit', 1, ''), 1 - worst, '', 3);
  const over = checked.flatMap(({ utilization }, i) => (utilization > 1 ? [shown[i]!] : []));
  if (over.length > 0) {
    const which = over.map((each) => `${each.name} ${text(each)}`).join('; ');
    return fail(`${part} utilization over 1.00: ${which}`, over, against1());
  }
  if (zones.length === 0) return unknown('zones');
  if (without.length > 0) return unknown(...without.map((zone) => `${part} check of zone ${zone}`));
  return pass(undefined, shown, against1());
}
