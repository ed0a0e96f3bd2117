// Two job files through their stages, with utilizations checked against arithmetic by hand.

import { describe, expect, test } from '@jest/globals';
import { decisionRecord } from './documents/decision-record.js';
import { surfaceStage } from './job.js';
import { APPROVE, ASK, BARN, HOUSE, playUpTo, WALL } from './job-files.js';

const gaugeOf = (told: ReturnType<typeof playUpTo>) => {
  const record = told.job.surfaces['s1']?.stages.gauge.record;
  if (!record?.evaluation) throw new Error('no gauge');
  return { evaluation: record.evaluation, content: record.content };
};

describe('a barn roof on purlins', () => {
  const told = playUpTo(BARN, 'gauge');
  const { evaluation } = gaugeOf(told);

  test('utilizations agree with arithmetic by hand', () => {
    // 26 gauge: flat weight 41.82 x 0.0187 = 0.7820 psf, formed x 43/36 = 0.9341 psf.
    // Zone 3: outward 0.6 x 60 - 0.6 x 0.9341 = 35.4395 psf on supports at 24 in; chart row 24 in,
    // outward 112 psf: 0.3164. Zone 1: supports at 48 in; outward 0.6 x 30 - 0.5604 = 17.4396 psf
    // against 28 psf: 0.6228. Inward: D + S = 0.9341 + 18 = 18.9341; D + Lr = 20.9341 governs;
    // D + 0.75 (0.6 x 16) + 0.75 x 20 = 23.1341 psf governs all, against 30 psf: 0.7711; deflection 28: 0.8262.
    const option = evaluation.options.find(({ id }) => id === 'steel-0.0187-ss-80');
    const zone = (name: string) => option?.zones.find((each) => each.zone === name);
    const of = (name: string, direction: string, part: string) =>
      zone(name)?.panel.find(
        (each) => each.direction === direction && each.limit_state.startsWith(part),
      )?.utilization;
    expect(of('3', 'outward', 'panel strength')).toBe('0.3164');
    expect(of('1', 'outward', 'panel strength')).toBe('0.6228');
    expect(of('1', 'inward', 'panel strength')).toBe('0.7711');
    expect(of('1', 'inward', 'deflection')).toBe('0.8262');
    // Attachment zone 2: 0.6 x 40 - 0.5604 = 23.4396 psf x 48 x 9 / 144 = 70.32 lb. Screw #14 into
    // 0.0598 in, F_u 65: pull-out 0.85 x 0.0598 x 0.242 x 65 x 1000 / 3 = 266.5 lb; pull-over of
    // SS 80 (F_u for design 0.75 x 82 = 61.5): 1.5 x 0.0187 x 0.625 x 61.5 x 1000 / 3 = 359.4 lb.
    const attachment = zone('2')?.attachment[0];
    expect(Number(attachment?.demand.v)).toBeCloseTo(70.32, 1);
    expect(Number(attachment?.capacity.v)).toBeCloseTo(266.5, 0);
    expect(attachment?.calculated).toBe(true);
  });

  test('29 gauge is ruled out where its chart fails, and says by how much', () => {
    const thin = evaluation.options.find(({ gauge }) => gauge === '29');
    expect(thin?.admissible).toBe(false);
    expect(thin?.why_not?.class).toBe('ruled-out');
    expect(thin?.why_not?.words).toContain('GAUGE-01');
  });

  test('open framing requires an engineer, and nothing else makes it done', () => {
    expect(evaluation.sign_off_required.join(' ')).toContain('SIGN-01');
    expect(surfaceStage(told.job, told.job.surfaces['s1']!)).toBe('sign-off');
    const signed = told.play(ASK).play(APPROVE, ['engineer']);
    expect(surfaceStage(signed.job, signed.job.surfaces['s1']!)).toBe('done');
  });

  test('a support found wider puts gauge and sign-off up for re-check; setting it back revives neither', () => {
    const wider = told
      .play(ASK)
      .play(APPROVE, ['engineer'])
      .play({
        type: 'record-facts',
        reason: 'found on site',
        facts: [{ on: 's1', fact: 'support-spacings', value: [{ v: '54' }], how: 'measured' }],
      });
    const surface = wider.job.surfaces['s1']!;
    expect(surface.stages.gauge.status).toBe('needs-recheck');
    expect(surface.stages.style.status).toBe('confirmed');
    expect(wider.job.signOffs['r1']?.differences.length).toBeGreaterThan(0);
    const back = wider.play({
      type: 'record-facts',
      reason: 'measured again',
      facts: [
        {
          on: 's1',
          fact: 'support-spacings',
          value: [{ v: '47.5' }, { v: '48' }, { v: '46' }, { zone: '3', v: '24' }],
          how: 'measured',
        },
      ],
    });
    expect(back.job.surfaces['s1']?.stages.gauge.status).toBe('needs-recheck');
    expect(back.job.signOffs['r1']?.differences.length).toBeGreaterThan(0);
  });

  test('a new exact color of the same group costs neither gauge nor sign-off', () => {
    const signed = told.play(ASK).play(APPROVE, ['engineer']);
    const recolored = signed.play({
      ...BARN.coating,
      color: 'clay',
      reason: 'the owner chose',
    } as never);
    expect(recolored.job.surfaces['s1']?.stages.gauge.status).toBe('confirmed');
    expect(recolored.job.signOffs['r1']?.differences).toEqual([]);
  });
});

describe('a house roof on plywood', () => {
  const { evaluation } = gaugeOf(playUpTo(HOUSE, 'gauge'));

  test('the tested assembly covers panel and attachment: hand arithmetic', () => {
    // 24 gauge: 41.82 x 0.0236 x 20/16 = 1.2337 psf. Zone 2e: outward 38 - 0.6 x 1.2337 = 37.26 psf
    // against T-101 at 24 in: 90 / 2 = 45 psf: 0.8280.
    const zone = evaluation.options
      .find(({ gauge }) => gauge === '24')
      ?.zones.find((each) => each.zone === '2e');
    expect(zone?.panel[0]?.utilization).toBe('0.8280');
    expect(zone?.panel[0]?.source).toContain('T-101');
    expect(zone?.attachment[0]?.utilization).toBe('0.8280');
  });

  test('each other option says why not: no test, not made', () => {
    const why = Object.fromEntries(
      evaluation.options.map(({ gauge, why_not }) => [gauge, why_not?.class]),
    );
    expect(why).toEqual({ '22': 'no-test', '24': undefined, '26': 'not-made' });
  });

  test('on a deck no engineer is required', () => {
    expect(evaluation.sign_off_required).toEqual([]);
  });

  test('the decision record answers why this gauge', () => {
    const told = playUpTo(HOUSE, 'gauge');
    const record = decisionRecord('job-1', told.events, {});
    const [surface] = record.surfaces;
    expect(surface?.why.join(' ')).toContain('24 gauge');
    expect(surface?.why.join(' ')).toContain('26 gauge');
    expect(record.timeline).toHaveLength(told.events.length);
  });
});

describe('a workshop wall on girts', () => {
  const { evaluation } = gaugeOf(playUpTo(WALL, 'gauge'));
  const zone = (gauge: string, name: string) =>
    evaluation.options
      .find((each) => each.gauge === gauge)
      ?.zones.find((each) => each.zone === name);

  test('a wall carries no weight, no snow and no roof live load: hand arithmetic', () => {
    // Zone 4, girts at 36 in: inward 0.6 x 30 = 18 psf against 54 psf: 0.3333; outward 0.6 x 33 = 19.8
    // psf against 50 psf: 0.3960. Zone 5, girts at 24 in: outward 0.6 x 41 = 24.6 against 112: 0.2196.
    const of = (name: string, direction: string) =>
      zone('26', name)?.panel.find(
        (each) => each.direction === direction && each.limit_state.startsWith('panel'),
      )?.utilization;
    expect(of('4', 'inward')).toBe('0.3333');
    expect(of('4', 'outward')).toBe('0.3960');
    expect(of('5', 'outward')).toBe('0.2196');
    // Attachment zone 4: 19.8 x 36 x 9 / 144 = 44.55 lb against 266.5 lb by pull-out: 0.1672.
    expect(zone('26', '4')?.attachment[0]?.demand.v).toBe('44.55');
    expect(zone('26', '4')?.attachment[0]?.utilization).toBe('0.1672');
  });

  test('29 gauge would pass and is dominated or cautioned; each other option says why not', () => {
    for (const { id, why_not } of evaluation.options)
      expect({ id, said: (why_not?.words.length ?? 1) > 0 }).toEqual({ id, said: true });
    expect(evaluation.sign_off_required.join(' ')).toContain('open framing');
  });
});
