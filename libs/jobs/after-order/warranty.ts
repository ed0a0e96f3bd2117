// Warranty documents: separate for paint, substrate, weathertightness and workmanship, each with its
// warrantor, the supplier's text unchanged, and exclusions that recorded facts already trigger.

import { disclosureItems } from './disclosures.js';
import type { WarrantyKind } from '../contract/after-order.js';
import type { CommandOf } from '../contract/commands.js';
import type { Catalogue } from '../contract/catalogue.js';
import { factPath } from '../contract/fact-dictionary.js';
import { accept, decline, type Context, type Decision } from '../decision.js';
import { CONFIRMED_STAGES, signOffStands, type Job, type Surface } from '../job.js';
import { lookupIn } from '../lookup.js';
import { refuse, type Refusal } from '../refusal.js';
import { ruleRefusals } from '../stages/confirm.js';
import { installedFacts, jobFact } from './gate-facts.js';
import { asStage, gated, speakAt } from './order.js';

const DAY_MS = 86_400_000;

/** `days` after a date, as a date; calendar arithmetic without a clock. */
export function dayAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}
const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

export function fileRegistration(job: Job, command: CommandOf<'file-registration'>): Decision {
  const { completedOn, registrations } = job.after;
  if (completedOn === null)
    return decline(refuse('MOVE-01', 'Registration follows completion: record completion first.'));
  if (registrations[command.kind])
    return decline(
      refuse('MOVE-07', `${command.kind} was registered on ${registrations[command.kind]?.on}.`),
    );
  if (command.on < completedOn)
    return decline(refuse('MOVE-10', `Registered before completion on ${completedOn}.`, '/on'));
  const due_by = dayAfter(completedOn, command.window_days);
  const { type: _, ...data } = command;
  return accept({
    type: 'registration-filed/1',
    data: { ...data, due_by, late_days: Math.max(0, daysBetween(due_by, command.on)) },
  });
}

export function issueWarranty(
  job: Job,
  command: CommandOf<'issue-warranty'>,
  context: Context,
): Decision {
  const stands = warrantorOf(context.catalogue, command);
  const surfaces = command.surfaces.flatMap((id) => job.surfaces[id] ?? []);
  const refusals = notYet(job, command, surfaces, stands.full_years ?? 0);
  if (refusals.length > 0) return decline(...refusals);
  const triggered = exclusionsTriggered(job, surfaces, context.catalogue);
  const said = speakAt(
    'warranty',
    {
      ...warrantyFacts(job, command, surfaces, context.catalogue, triggered),
      ...documentFacts(command, stands),
    },
    context,
  );
  const ruled = ruleRefusals(said, asStage(command), context);
  if (ruled.length > 0) return decline(...ruled);
  const {
    type: _,
    overrides,
    acknowledges,
    warrantor_address: __,
    full_years: ___,
    ...data
  } = command;
  const { address, full_years, version } = stands;
  return accept({
    type: 'warranty-issued/1',
    data: {
      ...data,
      ...(address === undefined ? {} : { warrantor_address: address }),
      ...(full_years === undefined ? {} : { full_years }),
      ...(version === undefined ? {} : { terms_version: version }),
      exclusions_triggered: triggered,
      ...gated(said, { overrides, acknowledges }, context),
    },
  });
}

/** Everything that keeps the document back before any rule speaks. */
function notYet(
  job: Job,
  { document, surfaces, years }: CommandOf<'issue-warranty'>,
  found: readonly Surface[],
  fullYears: number,
): readonly Refusal[] {
  return [
    ...(job.after.completedOn === null
      ? [refuse('MOVE-01', 'Warranty documents follow completion: record completion first.')]
      : []),
    ...(job.after.warranties[document]
      ? [refuse('MOVE-07', `Document ${document} was issued already.`, '/document')]
      : []),
    ...surfaces
      .filter((id) => !job.surfaces[id])
      .map((id) => refuse('MOVE-03', `There is no surface ${id}.`, '/surfaces')),
    ...found.flatMap((surface) => notLive(job, surface)),
    ...(fullYears > years
      ? [
          refuse(
            'MOVE-10',
            `Cover cannot be full for ${fullYears} years of ${years}.`,
            '/full_years',
          ),
        ]
      : []),
  ];
}

/** A document rests on decisions that count today, and on a sign-off that stands where one is asked. */
function notLive(job: Job, surface: Surface): readonly Refusal[] {
  const open = CONFIRMED_STAGES.filter((stage) => surface.stages[stage].status !== 'confirmed');
  return [
    ...(open.length > 0
      ? [refuse('MOVE-13', `${surface.name}: not confirmed on today's facts: ${open.join(', ')}.`)]
      : []),
    ...(signOffStands(job, surface)
      ? []
      : [refuse('MOVE-13', `${surface.name}: the engineer's sign-off does not stand.`)]),
  ];
}

/** What the catalogue knows of this warrantor's document; what the command says itself goes before. */
function warrantorOf(
  { warrantors = [] }: Catalogue,
  { warrantor, kind, warrantor_address, full_years }: CommandOf<'issue-warranty'>,
) {
  const known = warrantors.find(({ name }) => name === warrantor);
  const document = known?.documents.find((each) => each.kind === kind);
  return {
    address: warrantor_address ?? known?.address,
    full_years: full_years ?? document?.full_years,
    version: document?.version,
    text: document?.text,
  };
}

function documentFacts(
  { document, kind, terms }: CommandOf<'issue-warranty'>,
  { address, text }: ReturnType<typeof warrantorOf>,
) {
  return {
    documents_without_start: [],
    documents_without_warrantor: address === undefined ? [`${kind} ${document}: no address`] : [],
    terms_altered: text && text.digest !== terms.digest ? [terms.name] : [],
  };
}

/** Last day to register each kind, of several texts the soonest; null where every text asks for none. */
export function registrationDue(
  { warrantors = [] }: Catalogue,
  completedOn: string,
): Partial<Record<WarrantyKind, string | null>> {
  const due: Partial<Record<WarrantyKind, string | null>> = {};
  for (const { kind, registration_days } of warrantors.flatMap(({ documents }) => documents)) {
    const day = registration_days === undefined ? null : dayAfter(completedOn, registration_days);
    const known = due[kind] ?? null;
    due[kind] = day !== null && (known === null || day < known) ? day : known;
  }
  return due;
}

function warrantyFacts(
  job: Job,
  command: CommandOf<'issue-warranty'>,
  surfaces: readonly Surface[],
  catalogue: Catalogue,
  triggered: readonly string[],
) {
  const registration = job.after.registrations[command.kind];
  const coating = surfaces[0]?.stages.coating.record?.content;
  const term =
    coating &&
    catalogue.terms.find(
      (each) =>
        each.paint_system === coating.paint_system &&
        each.metal === coating.metal &&
        each.metallic_coating === coating.metallic_coating &&
        each.color_group === coating.color_group,
    );
  const consumer = jobFact<boolean>(job, 'consumer-product');
  return {
    ...installedFacts(job),
    registration_due_by:
      registration?.due_by ??
      job.after.registrationDue[command.kind] ??
      job.after.completedOn ??
      undefined,
    registered_on: registration?.on,
    warranty_title: command.title,
    full_tests_not_met: command.full_tests_not_met,
    consumer_product: consumer,
    disclosures_missing: disclosureItems(command.title).filter(
      (item) => !command.disclosures.some((each) => each.item === item),
    ),
    paint_system: coating?.paint_system as 'PVDF' | undefined,
    finish_term_years: coating?.paint_system === 'bare' ? undefined : term?.finish_years,
    paint_document_included: command.kind === 'paint',
    exclusions_not_named: triggered.filter(
      (each) => !command.exclusions_named.some((named) => named.includes(each)),
    ),
  };
}

/** Exclusions that the record already triggers, in the words a document must carry. */
export function exclusionsTriggered(
  job: Job,
  surfaces: readonly Surface[],
  catalogue: Catalogue,
): readonly string[] {
  const at = lookupIn(job);
  const of = (surface: Surface, name: 'copper-or-lead-above' | 'slope') =>
    at(factPath('surface', surface.id, name));
  const distance = Number((at('site/water-distance') as { v: string } | null)?.v ?? Infinity);
  const water = at('site/water');
  return [
    ...surfaces.flatMap((surface) => {
      const coating = surface.stages.coating.record?.content;
      const limit = catalogue.terms.find(
        (term) =>
          term.paint_system === coating?.paint_system && term.color_group === coating?.color_group,
      )?.water_distance;
      return limit && water === 'breaking-surf' && distance < Number(limit.v)
        ? [`${surface.name}: ${distance} ft from breaking surf, under ${limit.v} ft`]
        : [];
    }),
    ...surfaces
      .filter((surface) => of(surface, 'copper-or-lead-above') === true)
      .map(({ name }) => `${name}: copper or lead above`),
    ...(at('site/animals-or-fertilizer') === true
      ? ['animal confinement, fertilizer or chemicals']
      : []),
    ...surfaces
      .filter(({ id }) => (job.after.lots[id] ?? []).length > 1)
      .map(({ name }) => `${name}: more than one lot`),
    ...(Object.values(job.after.orders).some(({ receipts }) =>
      receipts.some(({ stored_dry }) => !stored_dry),
    )
      ? ['stored wet']
      : []),
    ...Object.values(job.after.registrations).flatMap((each) =>
      each && each.late_days > 0 ? [`${each.kind} registered ${each.late_days} days late`] : [],
    ),
  ];
}

export function transferWarranty(job: Job, command: CommandOf<'transfer-warranty'>): Decision {
  const warranty = job.after.warranties[command.document];
  if (!warranty)
    return decline(refuse('MOVE-03', `There is no document ${command.document}.`, '/document'));
  const refusals: Refusal[] = [];
  if (warranty.transfer === 'none')
    refusals.push(refuse('MOVE-20', 'This document is not transferable.'));
  if (warranty.transfer === 'once' && warranty.transfers.length > 0)
    refusals.push(refuse('MOVE-20', 'This document was transferred once already.'));
  if (command.on < warranty.start)
    refusals.push(refuse('MOVE-10', `Transferred before it starts on ${warranty.start}.`, '/on'));
  if (refusals.length > 0) return decline(...refusals);
  const { type: _, ...data } = command;
  return accept({ type: 'warranty-transferred/1', data });
}
