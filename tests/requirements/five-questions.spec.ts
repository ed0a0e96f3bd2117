// Five questions answered from a decision record alone: its JSON, read back, is all the answers have.

import { expect, test } from '@jest/globals';
import { decisionRecord, type DecisionRecord } from '#jobs';
import { APPROVE, ASK, BARN, playUpTo } from '../../libs/jobs/job-files.js';
import { answers } from '../../libs/documents/record-answers.js';

const NAMES = {
  'person-project-manager': 'Dana Field',
  '0190b5a0-0000-7000-8000-00000000e001': 'Avery Stone',
};

test('which gauge, on which loads, why not lighter, who approved, what changed since', () => {
  const told = playUpTo(BARN, 'gauge')
    .play(ASK)
    .play(APPROVE, ['engineer'])
    .play({
      type: 'record-facts',
      reason: 'found on site',
      facts: [{ on: 's1', fact: 'support-spacings', value: [{ v: '54' }], how: 'measured' }],
    });
  const record = JSON.parse(
    JSON.stringify(decisionRecord('job-1', told.events, NAMES)),
  ) as DecisionRecord;
  const five = answers(record, record.surfaces[0]!);
  console.log(
    five
      .map(({ question, lines }) => [question, ...lines.map((line) => `  ${line}`)].join('\n'))
      .join('\n'),
  );
  expect(five.map(({ question }) => question)).toEqual([
    'Which gauge and attachment, and on what support?',
    'On which loads, and from which source?',
    'Why not the next lighter?',
    'Who approved what, and when?',
    'What has changed since?',
  ]);
  const said = five.map(({ lines }) => lines.join(' '));
  expect(said[0]).toMatch(
    /26 gauge \(0\.0187 in.*screw-14: zone 1 at 9 in.*purlins.*support spacings 47\.5 in/s,
  );
  // 0.6 × 60 psf of wind less 0.6 of the panel weight, about 0.93 psf.
  expect(said[1]).toMatch(/letter of the building department.*zone 3 \(roof\) uplift −35\.44 psf/s);
  expect(said[2]).toMatch(/29 gauge.*(ruled out|utilization)/s);
  expect(said[3]).toMatch(
    /Gauge: Dana Field.*Engineer approved.*Avery Stone.*License: Avery Stone, PE \(invented\), KS-00001, KS/s,
  );
  expect(said[4]).toMatch(/became 54 in.*found on site.*In the scope of the sign-off/s);
});
