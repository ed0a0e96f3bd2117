// Every fact that a rule of a stage reads has a place in the record.

import { expect, test } from '@jest/globals';
import { ALL_RULES, STAGES } from '#rules';
import { PATHS } from './fact-paths.js';

test('each fact key that rules of the stages read says which paths it comes from', () => {
  const keys = ALL_RULES.filter(({ stage }) =>
    (STAGES as readonly string[]).includes(stage),
  ).flatMap(({ reads }) => reads);
  expect(keys.filter((key) => !(key in PATHS))).toEqual([]);
});
