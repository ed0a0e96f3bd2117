// Strength of a formed panel from its outline, per foot of cover: bending both ways, shear and web
// crippling. A calculated second opinion for through-fastened panels in bending, never a capacity
// against uplift of standing seam: there only tests count.

import { refused, result, type Fault, type Outcome } from '../check.js';
import { degrees, inches, kips, type Degrees, type Inches, type Kips } from '../units.js';
import { bendingOf, type BendingStrength, type Sheet } from './bending.js';
import { isWeb, sheetShape } from './outline.js';
import { KV_UNSTIFFENED, OMEGA_V, webShear, type SteelEdition } from './shear.js';
import { deckCrippling, type WebCrippling } from './web-crippling.js';

export interface Panel extends Sheet {
  readonly cover: Inches;
  readonly edition: SteelEdition;
  /** Length of bearing at supports. */
  readonly bearing: Inches;
  /** Fastened to every support at 18 in or closer. */
  readonly fastened: boolean;
}

export interface PanelWeb {
  readonly h: Inches;
  readonly theta: Degrees;
  /** The larger inside radius of its two bends. */
  readonly R: Inches;
}

/** Strengths per foot of cover. */
export interface PanelStrength {
  readonly panel: Panel;
  readonly positive: BendingStrength;
  readonly negative: BendingStrength;
  readonly webs: readonly PanelWeb[];
  /** Vertical shear, nominal and allowable. */
  readonly Vn: Kips;
  readonly Va: Kips;
  /** At an end and an interior support, or why it is not evaluated. */
  readonly crippling: { readonly end: WebCrippling; readonly interior: WebCrippling } | string;
}

/**
 * Bending both ways, shear of all webs, web crippling where Table G5-5 covers the webs. Faults name
 * the direction in which the section cannot be calculated. Left out: side laps and free-edged flats
 * as webs, support settlement, concentrated loads, walking on the panel.
 */
export function panelStrength(panel: Panel): Outcome<PanelStrength> {
  const shape = sheetShape(panel.outline, panel.t, panel.cover);
  if (!shape.ok) return shape;
  const positive = bendingOf(shape.value, panel, 'positive');
  const negative = bendingOf(shape.value, panel, 'negative');
  if (!positive.ok || !negative.ok) {
    return refused(...faultsOf(positive, 'positive'), ...faultsOf(negative, 'negative'));
  }
  const webs = websOf(positive.value);
  if (webs.length === 0) {
    return refused({
      pointer: '/outline',
      message: 'has no web: no flat crosses the middle of its depth',
    });
  }
  const perFoot = 12 / panel.cover;
  let Vn = 0;
  for (const web of webs) {
    const { t, Fy, E, edition } = panel;
    const own = webShear(web.h, t, Fy, E, KV_UNSTIFFENED, edition).Vn;
    Vn += own * Math.sin((web.theta * Math.PI) / 180) * perFoot;
  }
  return result({
    panel,
    positive: positive.value,
    negative: negative.value,
    webs,
    Vn: kips(Vn),
    Va: kips(Vn / OMEGA_V[panel.edition]),
    crippling: panelCrippling(panel, webs, perFoot),
  });
}

function faultsOf(outcome: Outcome<BendingStrength>, direction: string): Fault[] {
  if (outcome.ok) return [];
  return outcome.faults.map((f) => ({ ...f, message: `${direction} bending: ${f.message}` }));
}

/** Webs held at both ends. */
function websOf({ shape }: BendingStrength): PanelWeb[] {
  const webs: PanelWeb[] = [];
  for (const flat of shape.flats) {
    if (!isWeb(shape, flat)) continue;
    const [start, end] = [shape.bends[flat.bendStart], shape.bends[flat.bendEnd]];
    if (start === undefined || end === undefined) continue;
    webs.push({
      h: inches(flat.w),
      theta: degrees((Math.asin(Math.min(1, flat.sin)) * 180) / Math.PI),
      R: inches(Math.max(start.insideRadius, end.insideRadius)),
    });
  }
  return webs;
}

function panelCrippling(
  panel: Panel,
  webs: readonly PanelWeb[],
  perFoot: number,
): PanelStrength['crippling'] {
  const state = panel.fastened ? 'fastened' : 'unfastened';
  const total = { end: { Pn: 0, Pa: 0 }, interior: { Pn: 0, Pa: 0 } };
  for (const web of webs) {
    const one = { ...web, Fy: panel.Fy, t: panel.t, N: panel.bearing };
    const end = deckCrippling(one, `${state}-EOF`);
    const interior = deckCrippling(one, `${state}-IOF`);
    if (!end.ok || !interior.ok) {
      const faults = [end, interior].flatMap((o) => (o.ok ? [] : o.faults));
      return `web crippling: ${faults[0]!.message}`;
    }
    total.end.Pn += end.value.Pn * perFoot;
    total.end.Pa += end.value.Pa * perFoot;
    total.interior.Pn += interior.value.Pn * perFoot;
    total.interior.Pa += interior.value.Pa * perFoot;
  }
  return {
    end: { Pn: kips(total.end.Pn), Pa: kips(total.end.Pa) },
    interior: { Pn: kips(total.interior.Pn), Pa: kips(total.interior.Pa) },
  };
}
