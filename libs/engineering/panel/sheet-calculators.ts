// Calculators of the sheet itself: gauge, grade, corrugation.

import { calculator, STRUCTURE_CAUTION } from '../calculator.js';
import { refused, result } from '../check.js';
import { inches } from '../units.js';
import { corrugation } from './corrugation.js';
import { GAUGE_TABLE_NAMES, sheetThickness } from './gauge.js';
import { designStresses, designStressSteps, steelGrade } from './steel.js';

export const gauge = calculator({
  name: 'gauge',
  says: 'Thickness and weight of flat sheet by gauge, in one of three tables that differ',
  input: {
    gauge: { kind: 'number', says: 'gauge number', unit: '', whole: true },
    table: {
      kind: 'choice',
      of: GAUGE_TABLE_NAMES,
      says: 'uncoated sheet, galvanized sheet with its coating, or 15 U.S.C. 206',
    },
  },
  output: {
    t_in: 'nominal thickness',
    weight_psf: 'weight of flat sheet',
    t_min_in: 'least thickness, where the table has it',
    t_max_in: 'most thickness, where the table has it',
  },
  cautions: [
    STRUCTURE_CAUTION,
    'A gauge number is a label: order and design by the decimal base thickness of the sheet.',
  ],
  run: (input) => {
    const sheet = sheetThickness(input.gauge, input.table);
    if (!sheet.ok) return sheet;
    const { t, weight, least, most } = sheet.value;
    const range = least === undefined ? {} : { t_min_in: least, t_max_in: most };
    return result({ t_in: t, weight_psf: weight, ...range }, sheet.steps, sheet.notes);
  },
});

export const grade = calculator({
  name: 'grade',
  says: 'Yield stress and tensile strength of a sheet steel grade, specified and for design',
  input: {
    standard: {
      kind: 'choice',
      of: ['A653', 'A792', 'ASTM A653', 'ASTM A792'],
      says: 'ASTM standard of the sheet',
    },
    grade: { kind: 'text', says: 'structural grade: SS 33, SS 50 Class 1, SS 80 …' },
  },
  output: {
    Fy_ksi: 'specified yield stress',
    Fu_ksi: 'specified tensile strength',
    Fy_design_ksi: 'for design; reduced for low ductility',
    Fu_design_ksi: 'for design, connections too',
  },
  cautions: [STRUCTURE_CAUTION, "The grade that counts is the one on the coil's certificate."],
  run: (input) => {
    const found = steelGrade(input.grade);
    if (!found.ok) return refused(...found.faults);
    const design = designStresses(found.value);
    const value = {
      Fy_ksi: found.value.Fy,
      Fu_ksi: found.value.Fu,
      Fy_design_ksi: design.Fy,
      Fu_design_ksi: design.Fu,
    };
    const source = input.standard.endsWith('A653') ? 'astm-a653' : 'astm-a792';
    return result(value, designStressSteps(design, source));
  },
});

const length = (says: string) => ({ kind: 'number', says, unit: 'in', above: 0 }) as const;

export const corrugationCalculator = calculator({
  name: 'corrugation',
  says: 'Properties of an arc-and-tangent corrugation per foot of width',
  input: {
    pitch_in: length('crest to crest'),
    depth_in: length('crest to valley on one surface'),
    inside_radius_in: { kind: 'number', says: 'inside radius of the arcs', unit: 'in', least: 0 },
    t_base_in: length('base steel thickness, without coating'),
  },
  output: {
    A_in2_per_ft: 'area',
    I_in4_per_ft: 'moment of inertia',
    S_in3_per_ft: 'section modulus',
    r_in: 'radius of gyration',
    tangent_angle_deg: 'angle of the tangent to the horizontal',
    tangent_length_in: 'length of the tangent',
  },
  cautions: [STRUCTURE_CAUTION],
  run: (i) => {
    const [p, d] = [inches(i.pitch_in), inches(i.depth_in)];
    const wave = corrugation(p, d, inches(i.inside_radius_in), inches(i.t_base_in));
    if (!wave.ok) return wave;
    const { A, I, S, r, tangentAngle, tangentLength } = wave.value;
    const value = {
      A_in2_per_ft: A,
      I_in4_per_ft: I,
      S_in3_per_ft: S,
      r_in: r,
      tangent_angle_deg: tangentAngle,
      tangent_length_in: tangentLength,
    };
    return result(value, wave.steps, wave.notes);
  },
});
