// The calculators of attachment: screws in steel, withdrawal from wood, spacing against uplift.

import { calculator, STRUCTURE_CAUTION, type Calculator } from '../calculator.js';
import { result } from '../check.js';
import { inches } from '../units.js';
import { attachment } from './attachment-calculator.js';
import { JOINT, joint, positive } from './joint-input.js';
import { screwStrength } from './screw.js';
import { gravityOf, WOOD } from './wood-input.js';
import { WOOD_FASTENERS, withdrawal } from './wood-withdrawal.js';

const screw = calculator({
  name: 'screw',
  says: 'Pull-out, pull-over and shear of one screw through sheet steel',
  input: JOINT,
  output: {
    pullout_nominal_lb: 'nominal pull-out of t2',
    pullover_nominal_lb: 'nominal pull-over of t1',
    shear_nominal_lb: 'nominal shear by tilting and bearing',
    pullout_allowable_lb: 'nominal / Omega_pullout',
    pullover_allowable_lb: 'nominal / Omega_pullover',
    shear_allowable_lb: 'nominal / Omega_shear',
    Omega_pullout: 'safety factor',
    Omega_pullover: 'safety factor',
    Omega_shear: 'safety factor',
  },
  cautions: [STRUCTURE_CAUTION],
  run: (input) => {
    const strength = screwStrength(joint(input));
    if (!strength.ok) return strength;
    const { pullout, pullover, shear } = strength.value;
    const value = {
      pullout_nominal_lb: pullout.nominal,
      pullover_nominal_lb: pullover.nominal,
      shear_nominal_lb: shear.nominal,
      pullout_allowable_lb: pullout.allowable,
      pullover_allowable_lb: pullover.allowable,
      shear_allowable_lb: shear.allowable,
      Omega_pullout: pullout.Omega,
      Omega_pullover: pullover.Omega,
      Omega_shear: shear.Omega,
    };
    return result(value, strength.steps, strength.notes);
  },
});

const woodWithdrawalCalculator = calculator({
  name: 'wood-withdrawal',
  says: 'Reference withdrawal value from side grain, per inch of thread (nail: of shank)',
  input: {
    fastener: { kind: 'choice', of: WOOD_FASTENERS, says: 'lag screw, wood screw or smooth nail' },
    D_in: positive('diameter', 'in'),
    ...WOOD,
  },
  either: [['G', 'species']],
  output: { W_lb_per_in: 'reference withdrawal value, before duration and other factors' },
  cautions: [STRUCTURE_CAUTION],
  run: (input) => {
    const G = gravityOf(input);
    if (!G.ok) return G;
    const W = withdrawal(input.fastener, inches(input.D_in), G.value);
    return W.ok ? result({ W_lb_per_in: W.value }, W.steps, [...W.notes, ...G.notes]) : W;
  },
});

export const fastenersCalculators: readonly Calculator[] = [
  screw,
  woodWithdrawalCalculator,
  attachment,
];
