// Wind against published code tables and second-hand worked examples, each at its own tolerance.

import { describe, expect, test } from '@jest/globals';
import { feet } from '../../libs/engineering/units.js';
import { exposureCoefficient } from '../../libs/engineering/wind/velocity-pressure.js';
import { differences, readCases, runCases } from './cases.js';
import { byTopic, codeTable, inputsOf } from './wind-cases.js';

const REASON_7006 =
  'made with K_z 0.7006 of the 7-16 equation; 0.70 of the 7-22 table, 0.1 % less, rounds down';
const MADE_WITH_7006 = [
  '4-10-110',
  '4-20-120',
  '4-50-105',
  '4-50-170',
  '4-50-180',
  '4-100-130',
  '5-10-100',
  '5-10-110',
  '5-10-170',
  '5-20-105',
  '5-50-110',
  '5-50-120',
  '5-100-180',
].map((id) => `wind-fbcr23-wall${id}`);

describe('wind', () => {
  const cases = readCases('wind');
  test('every case has a way to run', () => {
    expect(cases).toHaveLength(247);
    expect(new Set(cases.map((each) => each.id)).size).toBe(247);
    expect(cases.filter((each) => byTopic[each.topic] === undefined)).toEqual([]);
  });
  runCases(cases, (c) => byTopic[c.topic]!(c), {
    'wind-fbcr23-adj-b-35':
      'the code table kept the ratio of the 7-16 equation (1.045); the 7-22 table gives 1.029',
    ...Object.fromEntries(MADE_WITH_7006.map((id) => [id, REASON_7006])),
  });
  test('wall tables are met by the K_z they were made with, that of the 7-16 equation', () => {
    const walls = cases.filter((each) => each.topic === 'wall-pressure-table');
    expect(walls).toHaveLength(70);
    const Kh = exposureCoefficient('7-16', 'B', feet(30));
    expect(walls.flatMap((c) => differences(c, codeTable(c, { ...inputsOf(c), Kh })))).toEqual([]);
  });
});
