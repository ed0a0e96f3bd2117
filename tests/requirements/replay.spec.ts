// Every decision of the demonstration, small and large, asked again on its recorded facts under its
// own editions: the same bytes. And its trace: every option by every rule, with a reason.

import { beforeAll, describe, expect, test } from '@jest/globals';
import { decidedBy, isStageEvent, replay, type Decided, type Shelf } from '#jobs';
import { DEFAULT_POLICY, type Context, type PastEvent } from '#jobs';
import { canonical } from '#ledger';
import { bookKey, RULE_BOOK } from '#rules';
import { digestOf } from '../../apps/api/data/digest.js';
import { Ledgers } from '../../apps/api/data/ledgers.js';
import { pastEvent } from '../../apps/api/jobs/job-stream.js';
import { readShelf } from '../../apps/api/rulebook/shelf.js';
import { fillDemonstration } from '../../apps/cli/demonstration.js';
import { DEMONSTRATION } from '../../apps/cli/demonstration/people.js';
import { PAST_RULES, pastCatalogues } from '../../apps/cli/large/past-editions.js';
import { planned } from '../../apps/cli/large/plan.js';
import { tell, type Said, type World } from '../../apps/cli/large/tell.js';
import { withService } from '../service.js';

/** What a store gives back: plain JSON, without the objects it was made from. */
const stored = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

function differing(decisions: readonly Decided[], shelf: Shelf): readonly unknown[] {
  return decisions
    .map((each) => ({ job: each.job, stage: each.stage, ...replay(each, shelf, canonical) }))
    .filter(({ outcome }) => outcome !== 'equal');
}

/** Every option has what every rule of its edition's gauge stage said, in the edition's order. */
function traceFaults({ evaluation, rules_edition }: Decided, shelf: Shelf): readonly string[] {
  const edition = shelf.rules(rules_edition.number)?.edition;
  const asked = (edition?.entries ?? [])
    .filter(({ rule, version }) => RULE_BOOK.get(bookKey(rule, version))?.stage === 'gauge')
    .map(({ rule }) => rule);
  return (evaluation?.options ?? []).flatMap(({ id, findings }) => [
    ...(JSON.stringify(findings.map(({ rule }) => rule)) === JSON.stringify(asked)
      ? []
      : [`${id}: not every rule, or in another order`]),
    ...findings.flatMap(({ rule, outcome, words, missing, limit, margin }) => [
      ...(words.trim() === '' ? [`${id} ${rule}: no words`] : []),
      ...(outcome === 'not-evaluated' && (missing ?? []).length === 0
        ? [`${id} ${rule}: not evaluated, and nothing is missing`]
        : []),
      ...((limit === undefined) === (margin === undefined)
        ? []
        : [`${id} ${rule}: a limit without a margin`]),
    ]),
  ]);
}

describe('the demonstration that loads at first start', () => {
  const running = withService();
  let decisions: readonly Decided[] = [];
  let shelf: Shelf;
  beforeAll(async () => {
    await fillDemonstration(running.service);
    const { ledger, connections } = running.service.get(Ledgers);
    const events = await ledger.readAll(DEMONSTRATION.company, { after: 0, limit: 10_000 });
    decisions = events.flatMap((event) => {
      const past = pastEvent(event);
      return isStageEvent(past) ? [decidedBy(event.stream.slice('job/'.length), past)] : [];
    });
    shelf = await readShelf(connections, DEMONSTRATION.company);
  }, 120_000);

  test('every decision replays byte-equal', () => {
    expect(decisions.length).toBeGreaterThanOrEqual(15);
    expect(differing(decisions, shelf)).toEqual([]);
  });

  test('a decision that says otherwise does not', () => {
    const forged = decisions.map((each) => ({
      ...each,
      findings: each.findings.map((one) => ({ ...one, words: `${one.words} indeed` })),
    }));
    expect(differing(forged, shelf)).toHaveLength(decisions.length);
  });

  test('every option by every rule is there, with a reason', () => {
    const gauges = decisions.filter(({ stage }) => stage === 'gauge');
    expect(gauges.length).toBeGreaterThanOrEqual(2);
    expect(gauges.flatMap((each) => traceFaults(each, shelf))).toEqual([]);
    const margins = gauges.flatMap(({ evaluation }) =>
      (evaluation?.options ?? []).flatMap(({ findings }) =>
        findings.flatMap(({ rule, margin }) => (margin ? [rule] : [])),
      ),
    );
    expect(new Set(margins).size).toBeGreaterThanOrEqual(3);
  });
});

const SAMPLE = 24;
const JOBS = 3_000;

test('a sample of the nine invented years replays byte-equal, under the editions of each day', async () => {
  const rules = PAST_RULES.map((edition) => ({ edition, digest: digestOf(edition) }));
  const catalogues = pastCatalogues().map((edition) => ({ edition, digest: digestOf(edition) }));
  const on = <T extends { readonly edition: { readonly in_force_from: string } }>(
    all: readonly T[],
    at: string,
  ): T => all.filter(({ edition }) => edition.in_force_from <= at).at(-1)!;
  const decisions: Decided[] = [];
  const world: World = {
    contextAt: (at, by): Context => {
      const [rule, catalogue] = [on(rules, at), on(catalogues, at)];
      return {
        by: { person: by.id, roles: by.roles },
        at,
        book: RULE_BOOK,
        policy: DEFAULT_POLICY,
        edition: rule.edition,
        editionDigest: rule.digest,
        catalogue: catalogue.edition,
        catalogueDigest: catalogue.digest,
      };
    },
    append: async ({ job, events }: Said) => {
      const past = stored(events) as unknown as readonly PastEvent[];
      for (const event of past) if (isStageEvent(event)) decisions.push(decidedBy(job.id, event));
    },
    packet: async () => 'f'.repeat(64),
  };
  const paper = { digest: 'f'.repeat(64), name: 'invented.txt' };
  for (let i = 0; i < SAMPLE; i++)
    await tell(planned(Math.floor((i * JOBS) / SAMPLE) + 7, JOBS, 1, paper).plan, world);
  const shelf: Shelf = {
    book: RULE_BOOK,
    rules: (number) => rules.find(({ edition }) => edition.number === number),
    catalogue: (number) => catalogues.find(({ edition }) => edition.edition === number),
  };
  expect(decisions.length).toBeGreaterThan(SAMPLE * 3);
  expect(new Set(decisions.map((each) => each.rules_edition.number)).size).toBeGreaterThan(2);
  expect(differing(decisions, shelf)).toEqual([]);
  expect(decisions.flatMap((each) => traceFaults(each, shelf))).toEqual([]);
}, 300_000);
