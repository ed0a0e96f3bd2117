// The calculator of gross and effective section properties from an outline.

import { calculator, STRUCTURE_CAUTION } from '../calculator.js';
import { result, step, type Step } from '../check.js';
import { cite } from '../sources.js';
import { inches, ksi } from '../units.js';
import { bendingStrength, OMEGA_B, type BendingStrength } from './bending.js';
import type { Element } from './element.js';
import { OUTLINE, outlineOf, squareBends } from './outline-input.js';
import { E_STEEL } from './steel.js';

const ELEMENT_RULE: Record<Element['kind'], string> = {
  tension: '1.1',
  stiffened: '1.1',
  web: '1.1.2',
  unstiffened: '1.2',
  lip: '1.2, 1.3',
  lipped: '1.3',
  ribbed: '1.4',
};

export const section = calculator({
  name: 'section',
  says: 'Gross and effective section properties of a bent sheet, and its bending strength',
  input: {
    outline: OUTLINE,
    t_in: { kind: 'number', says: 'base steel thickness', unit: 'in', above: 0 },
    Fy_ksi: { kind: 'number', says: 'yield stress for design', unit: 'ksi', above: 0, most: 100 },
    E_ksi: {
      kind: 'number',
      says: 'modulus of elasticity; 29500 unless given',
      unit: 'ksi',
      above: 0,
      optional: true,
    },
    repeat_in: {
      kind: 'number',
      says: 'cover of the outline; gives values per foot',
      unit: 'in',
      above: 0,
      optional: true,
    },
    bending: {
      kind: 'choice',
      of: ['positive', 'negative'],
      says: 'positive: the top (larger y) in compression',
    },
  },
  output: {
    gross: 'A_in2, Ix_in4, y_bar_in, Sx_in3; per foot with repeat_in',
    effective:
      'Ie_in4, Se_in3, Mn_kipin, Ma_kipin at first yield; I_service_in4 at 0.6 F_y for deflection',
    elements:
      '[{w_in, k, lambda, rho, b_in, kind, f1_ksi, f2_ksi}] along the sheet; null in tension',
    developed_in: 'length of the mid-line',
    per: 'outline or ft',
  },
  cautions: [STRUCTURE_CAUTION],
  run: (input) => {
    const { outline, t_in, Fy_ksi, E_ksi, repeat_in, bending } = input;
    const sheet = {
      outline: outlineOf(outline),
      t: inches(t_in),
      Fy: ksi(Fy_ksi),
      E: E_ksi === undefined ? E_STEEL : ksi(E_ksi),
      ...(repeat_in === undefined ? {} : { cover: inches(repeat_in) }),
    };
    const strength = bendingStrength(sheet, bending);
    if (!strength.ok) return strength;
    const value = valueOf(strength.value, repeat_in !== undefined);
    const notes = [
      ...NOTES,
      ...squareBends(outline),
      ...(E_ksi === undefined ? ['E 29500 ksi'] : []),
      ...(strength.value.shape.continuous ? ['the outline repeats: its ends join'] : []),
    ];
    return result(value, sectionSteps(strength.value), notes);
  },
});

const NOTES = [
  'first yield of the effective section; lateral-torsional and distortional buckling not included',
];

function valueOf(s: BendingStrength, perFoot: boolean): Record<string, unknown> {
  return {
    gross: { A_in2: s.gross.A, Ix_in4: s.gross.I, y_bar_in: s.gross.yBar, Sx_in3: s.gross.S },
    effective: {
      Ie_in4: s.effective.I,
      y_bar_in: s.effective.yBar,
      Se_in3: s.effective.S,
      Mn_kipin: s.Mn,
      Ma_kipin: s.Ma,
      I_service_in4: s.serviceI,
    },
    elements: s.elements.map((e) => ({
      w_in: e.w,
      k: e.k,
      lambda: e.lambda,
      rho: e.rho,
      b_in: e.b,
      kind: e.kind,
      f1_ksi: e.f1,
      f2_ksi: e.f2,
      ...(e.b1 === null ? {} : { b1_in: e.b1, b2_in: e.b2 }),
    })),
    developed_in: s.shape.developed,
    per: perFoot ? 'ft' : 'outline',
  };
}

function sectionSteps(s: BendingStrength): Step[] {
  const geometry = cite('mechanics', 'flats and annular bends');
  const steps = [
    step('A', s.gross.A, 'in2', 'sum of flats and bends', geometry),
    step('y_bar', s.gross.yBar, 'in', 'sum of A y / A', geometry),
    step('I_x', s.gross.I, 'in4', 'sum of own I and A (y - y_bar)^2', geometry),
    step('S_x', s.gross.S, 'in3', 'I_x / c, c to the farther extreme fiber', geometry),
    step('f_c', s.fc, 'ksi', 'F_y min(1, y_c/y_t): first yield', cite('aisi-s100-16', 'F3.1')),
  ];
  for (const e of s.elements) {
    if (e.k === null || e.lambda === null) continue;
    const at = cite('aisi-s100-16', `Appendix 1, ${ELEMENT_RULE[e.kind]}`);
    const name = `flat ${e.flat + 1}`;
    steps.push(
      step(`k, ${name}`, e.k, '', `${e.kind}, w ${e.w.toFixed(3)} in`, at),
      step(`lambda, ${name}`, e.lambda, '', '(1.052/sqrt k)(w/t) sqrt(f/E)', at),
      step(`rho, ${name}`, e.rho, '', '(1 - 0.22/lambda)/lambda, at most 1', at),
      step(`b, ${name}`, e.b, 'in', 'effective width', at),
    );
  }
  const f31 = cite('aisi-s100-16', 'F3.1');
  steps.push(
    step('I_e', s.effective.I, 'in4', 'effective parts about their own axis, iterated', f31),
    step('S_e', s.effective.S, 'in3', 'I_e / c', f31),
    step('M_n', s.Mn, 'kip-in', 'S_e F_y', f31),
    step('M_a', s.Ma, 'kip-in', `M_n / ${OMEGA_B}`, f31),
  );
  return steps;
}
