// From a job's record to what the rules of its gates read: what is not ready, not signed, not settled.

import type { Facts } from '#rules';
import type { Catalogue } from '../contract/catalogue.js';
import type { CommandOf } from '../contract/commands.js';
import { factDefinition, factPath, type FactName } from '../contract/fact-dictionary.js';
import { activeSurfaces, CONFIRMED_STAGES, signOffStands, type Job, type Surface } from '../job.js';
import { lookupIn } from '../lookup.js';
import { damageLeft, receiptDifferences } from './lines.js';

type OrderCommand = CommandOf<'issue-order'>;

/** A fact of the job as a whole, or undefined where nobody recorded it. */
export function jobFact<T>(job: Job, name: FactName): T | undefined {
  return (lookupIn(job)(factPath('job', null, name)) ?? undefined) as T | undefined;
}
export const jobAmount = (job: Job, name: FactName): number | undefined => {
  const value = jobFact<{ v: string }>(job, name);
  return value === undefined ? undefined : Number(value.v);
};
const surfaceFact = (job: Job, surface: Surface, name: FactName): unknown =>
  lookupIn(job)(factPath('surface', surface.id, name));

export function orderFacts(job: Job, command: OrderCommand, catalogue: Catalogue): Facts {
  const surfaces = activeSurfaces(job);
  const painted = surfaces.filter(
    ({ stages }) => stages.coating.record?.content.paint_system !== 'bare',
  );
  const named = (list: readonly Surface[]): readonly string[] => list.map(({ name }) => name);
  const lengths = new Map(command.lengths.map((each) => [each.surface, each]));
  const pieces = command.lines
    .filter(({ what, length }) => what === 'panel' && length)
    .map(({ length }) => Number(length?.v) / 12);
  return {
    surfaces_not_ready: surfaces.flatMap((surface) =>
      CONFIRMED_STAGES.filter((stage) => surface.stages[stage].status !== 'confirmed').map(
        (stage) => `${surface.name}: ${stage}`,
      ),
    ),
    sign_offs_not_standing: named(surfaces.filter((surface) => !signOffStands(job, surface))),
    assumed_facts: Object.entries(job.facts)
      .filter(([, { how }]) => how === 'assumed')
      .map(([path]) => factWords(job, path)),
    lengths_not_signed: named(
      surfaces.filter(({ id }) => {
        const own = lengths.get(id);
        return !own || (own.standing === 'signed' && !own.signed_by);
      }),
    ),
    colors_open: named(painted.filter(({ stages }) => !stages.coating.record?.content.color)),
    chips_not_accepted: named(
      painted.filter((surface) => surfaceFact(job, surface, 'chip-accepted') !== true),
    ),
    order_date: command.date,
    longest_piece_ft: pieces.length > 0 ? Math.max(...pieces) : undefined,
    planes_of_mixed_finish: [],
    requirements_due: surfaces.filter((surface) => !signOffStands(job, surface)).flatMap(dueFrom),
    cautions_not_acknowledged: surfaces.flatMap(unread),
    landing_place_named: command.landing_place !== undefined,
    ...paperFacts(job),
    ...warrantyBeforeOrder(job, surfaces, catalogue),
  };
}

/** "Slope of the surface (South)": a fact in the words it is asked by, and of what. */
function factWords(job: Job, path: string): string {
  const parts = path.split('/');
  const { asks } = factDefinition((parts.at(-1) ?? '') as FactName);
  const [kind = '', id = ''] = parts;
  const of = { surface: job.surfaces[id]?.name, building: job.buildings[id]?.name }[kind];
  return of === undefined ? asks : `${asks} (${of})`;
}

function paperFacts(job: Job): Facts {
  const at = lookupIn(job);
  const asked = (name: FactName): 'not-asked' | undefined =>
    at(factPath('site', null, name)) === false ? 'not-asked' : undefined;
  return {
    proposal_accepted: jobFact(job, 'proposal-accepted'),
    deposit_agreed_usd: jobAmount(job, 'deposit-agreed'),
    deposit_received_usd: jobAmount(job, 'deposit-received'),
    quote_valid_until: jobFact(job, 'quote-valid-until'),
    permit: jobFact(job, 'permit') ?? asked('permit-asked'),
    association_approval: jobFact(job, 'association-approval') ?? asked('association-asked'),
    truck_limit_ft: jobAmount(job, 'truck-limit'),
    site_limit_ft: jobAmount(job, 'site-limit'),
    handling_limit_ft: jobAmount(job, 'handling-limit'),
  };
}

function warrantyBeforeOrder(job: Job, surfaces: readonly Surface[], catalogue: Catalogue): Facts {
  const promised = jobFact<readonly string[]>(job, 'promised-documents');
  const onFile = jobFact<readonly string[]>(job, 'terms-on-file') ?? [];
  return {
    promised_documents: promised,
    promised_without_terms: promised?.filter((each) => !onFile.includes(each)),
    weathertightness_asked:
      promised === undefined
        ? undefined
        : promised.includes('weathertightness') ||
          surfaces.some((surface) => surfaceFact(job, surface, 'weathertightness-asked') === true),
    weathertightness_approved: jobFact(job, 'weathertightness-approved'),
    term_text_given: jobFact(job, 'term-text-given'),
    warranty_particulars_missing:
      promised === undefined || promised.length === 0
        ? []
        : particularsMissing(job, surfaces, catalogue),
  };
}

function particularsMissing(
  job: Job,
  surfaces: readonly Surface[],
  catalogue: Catalogue,
): readonly string[] {
  const at = lookupIn(job);
  const water = at('site/water');
  return [
    ...surfaces
      .filter(({ kind, id }) => kind === 'roof' && at(factPath('surface', id, 'slope')) === null)
      .map(({ name }) => `slope of ${name}`),
    ...(water === null ? ['kind of water nearby'] : []),
    ...(water !== null && water !== 'none' && at('site/water-distance') === null
      ? ['distance to the water']
      : []),
    ...surfaces
      .filter((surface) => !hasTerm(surface, catalogue))
      .map(({ name }) => `color term of ${name}`),
  ];
}

function hasTerm(surface: Surface, catalogue: Catalogue): boolean {
  const content = surface.stages.coating.record?.content;
  if (!content || content.paint_system === 'bare') return content !== undefined;
  return catalogue.terms.some(
    (term) =>
      term.metal === content.metal &&
      term.metallic_coating === content.metallic_coating &&
      term.paint_system === content.paint_system &&
      term.color_group === content.color_group,
  );
}

const dueFrom = (surface: Surface): readonly string[] =>
  CONFIRMED_STAGES.flatMap((stage) => surface.stages[stage].record?.findings ?? [])
    .filter(({ outcome, severity }) => outcome === 'fail' && severity === 'require')
    .map(({ rule, words }) => `${surface.name}: ${rule} ${words}`);

const unread = (surface: Surface): readonly string[] =>
  CONFIRMED_STAGES.flatMap((stage) => {
    const record = surface.stages[stage].record;
    const aside = record?.overrides.map(({ rule }) => rule) ?? [];
    return (record?.findings ?? [])
      .filter(
        ({ outcome, severity, rule }) =>
          outcome === 'fail' &&
          severity === 'caution' &&
          !record?.acknowledged.includes(rule) &&
          !aside.includes(rule),
      )
      .map(({ rule }) => `${surface.name}: ${rule}`);
  });

/** What delivery and installation left open, for completion and warranty. */
export function installedFacts(job: Job): Facts {
  const { after } = job;
  const orders = Object.values(after.orders);
  const surfaces = activeSurfaces(job);
  const reroofs = surfaces.filter((surface) => surfaceFact(job, surface, 'reroof') === true);
  return {
    acknowledgment_differences: orders.flatMap(
      ({ acknowledgment }) =>
        acknowledgment?.differences.map(
          ({ line, from, to }) => `${line}: ${from ?? 'nothing'} → ${to ?? 'nothing'}`,
        ) ?? [],
    ),
    receipt_differences: orders.flatMap((order) => receiptDifferences(order)),
    damage_not_settled: orders.flatMap(damageLeft),
    planes_without_lot: surfaces
      .filter(({ id }) => (after.lots[id] ?? []).length === 0)
      .map(({ name }) => name),
    planes_of_mixed_lots: surfaces
      .filter(
        ({ id }) => (after.lots[id] ?? []).length > 1 && !after.mixedLotsAccepted.includes(id),
      )
      .map(({ name }) => name),
    stored_dry: orders.flatMap(({ receipts }) => receipts).every(({ stored_dry }) => stored_dry),
    reroof: reroofs.length > 0,
    tear_off_confirmed: reroofs.every(({ tearOff }) => tearOff === 'confirmed'),
    covered_work_without_photos: surfaces
      .filter(({ id }) => (after.asBuilt[id]?.files.length ?? 0) === 0)
      .map(({ name }) => name),
    as_built_differences: surfaces.flatMap(({ id, name }) => {
      const built = after.asBuilt[id];
      return built
        ? built.differences.map((each) => `${name}: ${each}`)
        : [`${name}: nothing recorded as built`];
    }),
    final_inspection_passed: after.inspection?.passed,
    punch_list_open: Object.values(after.punch)
      .filter(({ open }) => open)
      .map(({ words }) => words),
  };
}
