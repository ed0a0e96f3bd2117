// Withdrawal of fasteners from side grain of wood: reference value per inch of thread, and the
// allowable force of one fastener with its adjustments (NDS-2018 chapter 12).

import { refused, result, step, type Fault, type Outcome } from '../check.js';
import { cite } from '../sources.js';
import { inches, pounds, type Inches, type Pounds, type Quantity } from '../units.js';

export const WOOD_FASTENERS = ['lag', 'wood-screw', 'nail'] as const;
export type WoodFastener = (typeof WOOD_FASTENERS)[number];
export type PoundsPerInch = Quantity<'lb/in'>;

interface Rule {
  readonly least: Inches;
  readonly most: Inches;
  readonly formula: string;
  readonly clause: string;
  readonly W: (G: number, D: number) => number;
}

/** Formula and range of the printed tables; those of wood screws and nails from memory. */
const RULES: Record<WoodFastener, Rule> = {
  lag: {
    least: inches(0.25),
    most: inches(1.25),
    formula: '1800 G^1.5 D^0.75',
    clause: 'Eq. 12.2-1',
    W: (G, D) => 1800 * G ** 1.5 * D ** 0.75,
  },
  'wood-screw': {
    least: inches(0.138),
    most: inches(0.372),
    formula: '2850 G^2 D',
    clause: 'Eq. 12.2-2',
    W: (G, D) => 2850 * G ** 2 * D,
  },
  nail: {
    least: inches(0.099),
    most: inches(0.375),
    formula: '1380 G^2.5 D',
    clause: 'Eq. 12.2-3',
    W: (G, D) => 1380 * G ** 2.5 * D,
  },
};

/** Specific gravity covered by the printed tables. */
export const SPECIFIC_GRAVITY = { least: 0.31, most: 0.73 } as const;

/**
 * W, lb per inch of thread (nail: of shank) in side grain; D in inches, G oven-dry specific
 * gravity. Smooth-shank nails; cut or rolled thread wood screws. Refused outside the tables' D and
 * G 0.31 to 0.73. Left out: end grain, ring-shank nails, head pull-through, lateral load.
 */
export function withdrawal(fastener: WoodFastener, D: Inches, G: number): Outcome<PoundsPerInch> {
  const rule = RULES[fastener];
  const faults: Fault[] = [];
  if (D < rule.least || D > rule.most) {
    faults.push({
      pointer: '/D_in',
      message: `must be ${rule.least} to ${rule.most} in for a ${fastener} (NDS-2018 12.2)`,
    });
  }
  if (G < SPECIFIC_GRAVITY.least || G > SPECIFIC_GRAVITY.most) {
    faults.push({ pointer: '/G', message: 'must be 0.31 to 0.73 (NDS-2018 Table 12.2A)' });
  }
  if (faults.length > 0) return refused(...faults);
  const W = rule.W(G, D) as PoundsPerInch;
  const notes =
    fastener === 'lag'
      ? ['side grain; multiply by 0.75 in end grain']
      : ['side grain; no withdrawal value in end grain'];
  return result(W, [step('W', W, 'lb/in', rule.formula, cite('nds-2018', rule.clause))], notes);
}

export interface WoodConnection {
  readonly fastener: WoodFastener;
  readonly D: Inches;
  readonly G: number;
  /** Thread in the main member; the tip does not count. */
  readonly threadLength: Inches;
  /** C_D, 0.9 to 1.6; 1.6 for wind. */
  readonly durationFactor: number;
}

/**
 * W' = W C_D p, pounds for one fastener in dry, untreated wood at normal temperature (NDS-2018
 * 12.2, Table 11.3.1). Refused where C_D is outside 0.9 to 1.6 (impact, 2.0, is not for
 * connections) or the thread has no length. Left out: wet service, temperature, end grain, toe
 * nails.
 */
export function woodWithdrawal(c: WoodConnection): Outcome<Pounds> {
  const W = withdrawal(c.fastener, c.D, c.G);
  const faults = W.ok ? [] : [...W.faults];
  if (!(c.durationFactor >= 0.9 && c.durationFactor <= 1.6)) {
    faults.push({ pointer: '/duration_factor', message: 'must be 0.9 to 1.6 (NDS-2018 2.3.2)' });
  }
  if (!(c.threadLength > 0)) {
    faults.push({ pointer: '/thread_length_in', message: 'must be over 0 in' });
  }
  if (!W.ok || faults.length > 0) return refused(...faults);
  const allowable = pounds(W.value * c.durationFactor * c.threadLength);
  const source = cite('nds-2018', '12.2, Table 11.3.1');
  const steps = [...W.steps, step("W' p", allowable, 'lb', 'W C_D p', source)];
  return result(allowable, steps, [...W.notes, 'dry, untreated wood at normal temperature']);
}
