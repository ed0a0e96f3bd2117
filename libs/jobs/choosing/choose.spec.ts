// The calculator `choose` gives the evaluation that a job would get, and every fault at once.

import { expect, test } from '@jest/globals';
import { contextOf } from '../given.js';
import { HOUSE, playUpTo } from '../job-files.js';
import { choose } from './choose.js';

const facts = (on: string | null) =>
  Object.fromEntries(
    (HOUSE.facts as { facts: readonly { on: string | null; fact: string; value: unknown }[] }).facts
      .filter((each) => each.on === on)
      .map(({ fact, value }) => [fact, value]),
  );
const INPUT = {
  kind: 'roof',
  priorities: ['value'],
  facts: { site: facts(null), building: facts('b1'), surface: facts('s1') },
  style: { profile: 'seam-16', width_in: 16 },
  coating: { metal: 'steel', metallic_coating: 'AZ50', paint_system: 'PVDF', color_group: 'dark' },
  hazards: (HOUSE.hazards as { hazards: unknown }).hazards,
  attachment: (HOUSE.gauge as { attachment: unknown }).attachment,
};

test('gives the same options, zones and recommendation as the job', () => {
  const made = choose(INPUT, contextOf());
  const record = playUpTo(HOUSE, 'gauge').job.surfaces['s1']?.stages.gauge.record?.evaluation;
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  expect(made.value.recommendation).toEqual(record?.recommendation);
  expect(made.value.options.map(({ id, rank }) => [id, rank])).toEqual(
    record?.options.map(({ id, rank }) => [id, rank]),
  );
});

test('names every fault: of the input, and of a stage', () => {
  const wrong = choose({ ...INPUT, kind: 'floor', extra: 1 }, contextOf());
  expect(wrong.ok ? [] : wrong.faults.map(({ pointer }) => pointer).sort()).toEqual(['/', '/kind']);
  const steep = choose(
    {
      ...INPUT,
      facts: {
        ...INPUT.facts,
        surface: { ...INPUT.facts.surface, slope: { v: '1', u: 'per-12' } },
      },
    },
    contextOf(),
  );
  expect(steep.ok ? '' : steep.faults.map(({ message }) => message).join(' ')).toContain(
    'STYLE-02',
  );
});
