// Cases of the two plain shapes of gates: nothing left on a list, a question answered with yes.

import type { FlagKey, ListKey } from '../outstanding.js';
import type { RuleCases } from './rule-cases.js';

export const listCases = (key: ListKey, first: string, second: string): RuleCases => ({
  passes: [{ [key]: [] }],
  refuses: [{ [key]: [first] }, { [key]: [first, second] }],
  unknown: [{}],
});

export const flagCases = (key: FlagKey): RuleCases => ({
  passes: [{ [key]: true }],
  refuses: [{ [key]: false }],
  unknown: [{}],
});
