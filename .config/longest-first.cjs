// On a machine that has no times of an earlier run, the suites known to be long begin first, so that no
// core waits at the end.

const Sequencer = require('@jest/test-sequencer').default;

const LONGEST = [
  'tests/journeys/every-page.spec.ts',
  'libs/jobs/histories.spec.ts',
  'tests/journeys/states.spec.ts',
  'tests/faults/ledger-crash.spec.ts',
  'tests/faults/service-start.spec.ts',
  'tests/journeys/after-gauge.spec.ts',
  'tests/journeys/exceptions.spec.ts',
];
const rank = ({ path }) => {
  const place = LONGEST.findIndex((name) => path.endsWith(name));
  return place < 0 ? LONGEST.length : place;
};

module.exports = class LongestFirst extends Sequencer {
  sort(tests) {
    return [...super.sort(tests)].sort((a, b) => rank(a) - rank(b));
  }
};
