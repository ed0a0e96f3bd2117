// The cases that every rule must have: facts on which it passes and facts on which it fails. Where
// it does not apply, where it cannot say, and what other settings change may stand beside them.

import type { Facts } from '../facts.js';
import type { Settings, Severity, Verdict } from '../rule.js';

export interface RuleCases {
  readonly passes: readonly [Facts, ...Facts[]];
  /** The outcome is fail, whatever the severity. */
  readonly refuses: readonly [Facts, ...Facts[]];
  readonly notApplicable?: readonly Facts[];
  readonly unknown?: readonly Facts[];
  readonly withSettings?: readonly {
    readonly settings: Settings;
    readonly facts: Facts;
    readonly outcome: Verdict['outcome'];
    readonly severity?: Severity;
  }[];
}
