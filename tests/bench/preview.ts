// How long the preview of a drafted edition takes over 20,000 past decisions, and how much memory.
// The decisions are made one by one while it runs, and the time to make them is taken off.

import {
  evaluate,
  preview,
  type Catalogue,
  type Decided,
  type Evaluation,
  type Impact,
  type Question,
  type Shelf,
} from '#jobs';
import { EDITION_2, RULE_BOOK, type Edition } from '#rules';
import { demonstrationCatalogue } from '../../apps/cli/demonstration/catalogue.js';
import { questions } from './questions.js';

const DECISIONS = 20_000;
const catalogue = demonstrationCatalogue();
const settings: Readonly<Record<string, Edition['entries'][number]['settings']>> = {
  'GAUGE-05': { not_stocked: true },
  'GAUGE-07': { hail_country_stone_in: 1.5 },
};
const tighter = { utilization_limit: 0.9 };
const draft: Edition = {
  ...EDITION_2,
  number: 3,
  in_force_from: '2026-12-01',
  summary: 'Three settings changed.',
  entries: EDITION_2.entries.map((entry) => ({
    ...entry,
    settings:
      entry.rule === 'SIGN-01'
        ? { ...entry.settings, ...tighter }
        : (settings[entry.rule] ?? entry.settings),
  })),
};
const shelf: Shelf = {
  book: RULE_BOOK,
  rules: () => ({ edition: EDITION_2, digest: 'e'.repeat(64) }),
  catalogue: () => ({ edition: catalogue, digest: 'c'.repeat(64) }),
};

let making = 0;
function* decisions(from: Catalogue): Generator<Decided> {
  for (let made = 0; made < DECISIONS; made += 100) {
    const start = performance.now();
    const some = questions(from, 100, made + 1).map((question, i) => decided(question, made + i));
    making += performance.now() - start;
    yield* some;
  }
}

/** What the record of such a decision holds, as far as the preview reads it. */
function decided(question: Question, i: number): Decided {
  const { facts, attachment, wind, snow } = question;
  const evaluation: Evaluation = evaluate(question, []);
  const option = evaluation.recommendation.option ?? evaluation.options[0]?.id ?? '';
  const result = evaluation.options.find(({ id }) => id === option);
  const own = (path: string): string => `surface/s1/${path}`;
  const amount = (value: number, u: string) => ({ v: String(value), u });
  return {
    job: `job-${i}`,
    surface: 's1',
    stage: 'gauge',
    content: {
      option,
      gauge: result?.gauge ?? null,
      thickness_in: result?.thickness.v ?? '',
      grade: result?.grade ?? '',
      attachment,
      recommended: evaluation.recommendation.option,
      why: null,
    },
    reads: {
      [own('kind')]: facts.kind,
      'job/priorities': facts.priorities,
      [own('style/profile')]: question.profile.id,
      [own('style/width')]: question.width,
      [own('coating/metal')]: facts.metal,
      [own('coating/metallic_coating')]: facts.metallic_coating,
      [own('coating/paint_system')]: facts.paint_system,
      [own('coating/color_group')]: facts.color_group,
      [own('hazards/wind')]: wind,
      [own('hazards/snow')]: snow,
      [own('hazards/roof_live_psf')]: null,
      [own('substrate')]: question.substrate,
      [own('support-spacings')]: question.spacings,
      [own('slope')]: amount(facts.slope_per_12 ?? 0, 'per-12'),
      [own('area')]: amount(20 + (i % 400) / 10, 'squares'),
      [own('longest-piece')]: amount(20, 'ft'),
      'site/design-stone': amount(facts.design_stone_in ?? 0, 'in'),
      'site/wind-speed': amount(115, 'mph'),
      'site/ground-snow': amount(20, 'psf'),
      'building/b1/risk-category': 'II',
      'building/b1/residential': facts.residential,
      [own('deck-thickness')]: amount(0.594, 'in'),
      [own('support-thickness')]: amount(0.0598, 'in'),
      [own('support-tensile-strength')]: amount(65, 'ksi'),
      [own('wood-specific-gravity')]: amount(0.5, 'G'),
      [own('fastener-bite')]: amount(1, 'in'),
    },
    findings: result?.findings ?? [],
    evaluation,
    rules_edition: { number: 2, digest: 'e'.repeat(64) },
    catalogue_edition: { number: 1, digest: 'c'.repeat(64) },
  };
}

let most = 0;
function impactOf(): Impact {
  const running = preview(decisions(catalogue), draft, shelf);
  for (;;) {
    const next = running.next();
    if (next.done) return next.value;
    most = Math.max(most, process.memoryUsage().rss);
  }
}
const start = performance.now();
const cpu = process.cpuUsage();
const { done, asked, counts } = impactOf();
const took = performance.now() - start - making;
const used = process.cpuUsage(cpu);
const processor = (used.user + used.system) / 1e6;
const share = took / (took + making);
console.log(
  `preview of ${done} decisions (${asked} different questions), one core: ` +
    `${(took / 1000).toFixed(1)} s, processor ${(processor * share).toFixed(1)} s (limit 15 s); ` +
    `most memory ${(most / 2 ** 20).toFixed(0)} MB (limit 400 MB)`,
);
console.log(`making them took ${(making / 1000).toFixed(1)} s more; ${JSON.stringify(counts)}`);
process.exitCode = processor * share <= 15 && most <= 400 * 2 ** 20 ? 0 : 1;
