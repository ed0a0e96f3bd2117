// Wind against published code tables and second-hand worked examples, each at its own tolerance.

import { describe, expect, test } from '@jest/globals';
import { feet } from '../../libs/engineering/units.js';
import { exposureCoefficient } from '../../libs/engineering/wind/velocity-pressure.js';
import { differences, knownNotMet, readCases, runCases } from './cases.js';
import { byTopic, codeTable, inputsOf } from './wind-cases.js';

describe('wind', () => {
  const cases = readCases('wind');
  test('every case has a way to run', () => {
    expect(cases).toHaveLength(247);
    expect(new Set(cases.map((each) => each.id)).size).toBe(247);
    expect(cases.filter((each) => byTopic[each.topic] === undefined)).toEqual([]);
  });
  runCases(cases, (c) => byTopic[c.topic]!(c), knownNotMet('wind'));
  test('wall tables are met by the K_z they were made with, that of the 7-16 equation', () => {
    const walls = cases.filter((each) => each.topic === 'wall-pressure-table');
    expect(walls).toHaveLength(70);
    const Kh = exposureCoefficient('7-16', 'B', feet(30));
    expect(walls.flatMap((c) => differences(c, codeTable(c, { ...inputsOf(c), Kh })))).toEqual([]);
  });
});
