// The whole evaluation of one surface: every option, every rule, every zone. Pure and total: the same
// question gives the same bytes; a surface without numbers gives options without numbers.

import { amount } from '#engineering';
import { findings, type Finding, type SurfaceFacts, type ZoneFacts } from '#rules';
import type { Evaluation, FactUse, OptionResult, ZoneResult } from '../contract/evaluation.js';
import { catalogueOf } from './catalogue-of.js';
import { demandOn, demandRecord, zonesOf, type Zone } from './demand.js';
import { optionsOf, optionWords, priceAmount, type Option } from './options.js';
import type { Question } from './question.js';
import { advantage, rank, RANKING, type Judged } from './rank.js';
import { refuses, whyNot } from './why-not.js';
import { checkZone, type ZoneChecked } from './zone-checks.js';

/** Bumped when a change of code could change a number or a word; the record names it. */
export const ENGINE = 'choosing 1';

/** `picked` is the option the person takes; the recommended one where none is given yet. */
export function evaluate(asked: Question, facts: readonly FactUse[], picked?: string): Evaluation {
  const question = { ...asked, catalogue: catalogueOf(asked.catalogue, asked.profile.id) };
  const zones = zonesOf(question);
  const options = optionsOf(question);
  const judged = options.map((option) => judge(question, option, options, zones));
  const admissible = judged.filter((each) => each.admissible);
  const order = rank(admissible, question.facts.priorities ?? []) as readonly Judged[];
  const best = order[0] ?? null;
  const pick = judged.find(({ option }) => option.id === picked) ?? best;
  return {
    engine: ENGINE,
    day: question.day,
    rules_edition: { number: question.edition.number, digest: question.editionDigest },
    catalogue_edition: { number: question.catalogue.edition, digest: question.catalogueDigest },
    facts,
    attachment: question.attachment,
    demands: options[0]
      ? zones.map((zone) => demandRecord(question, zone, pick?.option ?? options[0]!))
      : [],
    options: judged.map((each) => optionResult(each, order, pick)),
    ranking: { by: RANKING, order: order.map(({ option }) => option.id) },
    recommendation: { option: best?.option.id ?? null, sentence: sentence(order, judged) },
    what_would_change: [],
    reasons: [],
    searched: null,
    budget_reached: false,
    sign_off_required: pick ? signOffReasons(question, pick) : [],
    cautions: CAUTIONS,
  };
}

export type Check = (question: Question, option: Option, zone: Zone) => ZoneChecked;

/** One option in one zone: its demand against every capacity. */
export const checkedIn: Check = (question, option, zone) => {
  return checkZone(question, option, zone, demandOn(question, zone, option.weight));
};

/** `check` may be one that remembers what it has checked before. */
export function judge(
  question: Question,
  option: Option,
  options: readonly Option[],
  zones: readonly Zone[],
  check: Check = checkedIn,
): Judged {
  const checked = zones.map((zone) => check(question, option, zone));
  const zoneFacts = checked.map(({ facts }) => facts);
  const said = findings(
    question.edition,
    question.book,
    'gauge',
    optionFacts(question, option, options, zoneFacts),
  );
  return {
    option,
    findings: said,
    zones: checked.map(({ result }) => result),
    zoneFacts,
    admissible: !said.some(refuses),
  };
}

export function optionFacts(
  question: Question,
  option: Option,
  options: readonly Option[],
  zones: readonly ZoneFacts[],
): SurfaceFacts {
  const thinner = options.find(
    (each) => each.thickness_in < option.thickness_in && each.price !== null,
  );
  return laidOver(question.facts, {
    zones,
    assembly_hail_class: hailClass(question, option),
    option: {
      gauge: option.gauge ?? undefined,
      thickness_in: option.thickness_in,
      availability: option.availability,
      price_per_square_usd: option.price ?? undefined,
      thinner:
        thinner && thinner.price !== null
          ? { gauge: thinner.gauge ?? undefined, price_per_square_usd: thinner.price }
          : undefined,
    },
  });
}

/** A surface has many facts and is asked about for every option: they are shared, not copied. */
const laidOver = (facts: SurfaceFacts, own: SurfaceFacts): SurfaceFacts =>
  Object.assign(Object.create(facts) as SurfaceFacts, own);

/** The rating of a tested assembly of this thickness with this fastener; none is known as 0. */
function hailClass({ catalogue, profile, attachment }: Question, option: Option): number {
  const own = catalogue.assemblies.filter(
    (each) =>
      each.profile === profile.id &&
      Number(each.thickness.v) === option.thickness_in &&
      each.fastener === attachment.fastener,
  );
  return Math.max(0, ...own.map(({ hail_class }) => hail_class ?? 0));
}

function optionResult(each: Judged, order: readonly Judged[], pick: Judged | null): OptionResult {
  const { option, zones } = each;
  const place = order.indexOf(each);
  const least = option.row?.least_order;
  return {
    id: option.id,
    gauge: option.gauge,
    thickness: amount(option.thickness_in, 4, 'in'),
    grade: option.grade,
    availability: option.availability,
    lead_days: option.row?.lead_days ?? null,
    least_order: least ?? null,
    weight: amount(option.weight, 3, 'psf'),
    price: priceAmount(option.price),
    zones,
    findings: each.findings,
    admissible: each.admissible,
    rank: place < 0 ? null : place + 1,
    governs: governs(zones),
    why_not: pick === each ? null : whyNot(each, pick),
  };
}

/** The zone and limit state of the highest utilization. */
function governs(zones: readonly ZoneResult[]): OptionResult['governs'] {
  let found: OptionResult['governs'] = null;
  for (const { zone, panel, attachment } of zones) {
    for (const { limit_state, direction, utilization } of [...panel, ...attachment]) {
      if (!found || Number(utilization) > Number(found.utilization)) {
        found = { zone, limit_state: `${limit_state} (${direction})`, utilization };
      }
    }
  }
  return found;
}

function sentence(order: readonly Judged[], judged: readonly Judged[]): string {
  const [best, next] = order;
  if (!best) {
    return judged.length === 0
      ? 'The catalogue edition offers no thickness of this profile in this metal.'
      : 'No option is admissible; the findings say what each lacks.';
  }
  const most = governs(best.zones);
  const passes = most
    ? `passes in every zone, most used in zone ${most.zone} (${most.limit_state}) at ${most.utilization}`
    : 'is admissible';
  const beats = next
    ? `, and it ${advantage(best, next)} compared with ${optionWords(next.option)}`
    : ', and it is the only admissible option';
  return `${optionWords(best.option)} is recommended: it ${passes}${beats}.`;
}

function signOffReasons(question: Question, pick: Judged): readonly string[] {
  const facts = laidOver(question.facts, { zones: pick.zoneFacts });
  const own = findings(question.edition, question.book, 'sign-off', facts);
  return [...own, ...pick.findings].filter(requires).map(({ rule, words }) => `${rule}: ${words}`);
}

const requires = ({ severity, outcome }: Finding): boolean =>
  severity === 'require' && outcome !== 'pass' && outcome !== 'not-applicable';

export const CAUTIONS = [
  'An office aid: local code and the authority having jurisdiction govern, and wind and snow values come from them.',
  'What spans needs a licensed engineer. A panel that passes is not thereby walkable.',
  'Hail ratings belong to the whole assembly and speak of splits, not dents.',
] as const;
