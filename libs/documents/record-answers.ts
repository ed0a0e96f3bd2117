// The five questions a stranger asks of a surface's record, answered from the record alone.

import {
  prose,
  type DecisionRecord,
  type Evaluation,
  type OptionResult,
  type RecordedStage,
  type RecordedSurface,
} from '#jobs';
import { optionName } from './option-tables.js';
import {
  amountWords,
  capital,
  factWords,
  momentWords,
  personWords,
  spaced,
  statusWords,
  valueWords,
} from './words.js';

export interface Answer {
  readonly question: string;
  readonly lines: readonly string[];
}

export function answers(record: DecisionRecord, surface: RecordedSurface): readonly Answer[] {
  return [
    { question: 'Which gauge and attachment, and on what support?', lines: whatWasChosen(surface) },
    { question: 'On which loads, and from which source?', lines: loads(surface) },
    { question: 'Why not the next lighter?', lines: whyNotLighter(surface) },
    { question: 'Who approved what, and when?', lines: approvals(record, surface) },
    { question: 'What has changed since?', lines: changes(surface) },
  ];
}

export const stageOf = (surface: RecordedSurface, stage: string): RecordedStage | undefined =>
  surface.stages.find((each) => each.stage === stage);
const chosen = (stage: RecordedStage | undefined, what: string): string | undefined =>
  stage?.chosen.find((each) => each.what === what)?.value;

/** The option that was picked, by the gauge stage's own entry. */
export function pickedOption(surface: RecordedSurface): OptionResult | undefined {
  const id = chosen(stageOf(surface, 'gauge'), 'option');
  return surface.gauge?.options.find((each) => each.id === id);
}

function whatWasChosen(surface: RecordedSurface): readonly string[] {
  const [style, coating, substrate, gauge] = ['style', 'coating', 'substrate', 'gauge'].map(
    (each) => stageOf(surface, each),
  );
  const option = pickedOption(surface);
  if (!gauge || !option) return ['No gauge has been selected for this surface.'];
  const finish = ['metal', 'metallic coating', 'paint system', 'color group', 'color'].flatMap(
    (each) => chosen(coating, each) ?? [],
  );
  const profile = chosen(style, 'profile name') ?? 'profile not recorded';
  return [
    `${optionName(option)}; ${profile}, ${chosen(style, 'width') ?? '?'} in wide; ${finish.map(spaced).join(', ')}.`,
    `Attachment: ${chosen(gauge, 'attachment') ?? 'not recorded'}.`,
    `On ${spaced(chosen(substrate, 'substrate') ?? 'a substrate not recorded')}${support(surface)}.`,
  ];
}

const SUPPORT_FACTS =
  /\/(support-spacings|support-thickness|deck-thickness|wood-specific-gravity)$/;

function support(surface: RecordedSurface): string {
  const facts = new Map(
    (surface.gauge?.facts ?? [])
      .filter(({ path, value }) => value !== null && SUPPORT_FACTS.test(path))
      .map((each) => [each.path, each]),
  );
  const said = [...facts.values()].map(({ path, value, how }) => {
    return `${factWords(path).toLowerCase()} ${valueWords(value)}${how ? ` (${how})` : ''}`;
  });
  return said.length === 0 ? '' : `; ${said.join('; ')}`;
}

function loads(surface: RecordedSurface): readonly string[] {
  const hazards = stageOf(surface, 'hazards');
  const from = (['wind', 'snow'] as const).flatMap((each) => {
    const words = chosen(hazards, each);
    return words === undefined ? [] : [`${capital(each)}: ${prose(words)}.`];
  });
  const demands = surface.gauge?.demands ?? [];
  if (demands.length === 0) return [...from, 'No loads on the panel are recorded.'];
  return [
    ...from,
    `Governing loads on the panel, service level: ${demands.map(demandWords).join('; ')}.`,
  ];
}

const demandWords = ({ zone, part, inward, outward }: Evaluation['demands'][number]): string =>
  `zone ${zone} (${part}) uplift ${amountWords(outward)}, inward ${amountWords(inward)}`;

/** The thickest of the options thinner than the picked one. */
function whyNotLighter(surface: RecordedSurface): readonly string[] {
  const picked = pickedOption(surface);
  if (!picked || !surface.gauge) return ['No gauge has been selected for this surface.'];
  const thinner = surface.gauge.options
    .filter((each) => Number(each.thickness.v) < Number(picked.thickness.v))
    .sort((a, b) => Number(b.thickness.v) - Number(a.thickness.v));
  const [next] = thinner;
  if (!next) return ['The catalogue edition offers no lighter sheet for this profile and metal.'];
  const words = next.why_not?.words ?? 'No reason is recorded.';
  const governs = next.governs
    ? [
        `Its governing check: zone ${next.governs.zone}, ${next.governs.limit_state}, utilization ${next.governs.utilization}.`,
      ]
    : [];
  return [
    `${optionName(next)}: ${next.why_not ? spaced(next.why_not.class) : 'not classed'}. ${sentence(words)}`,
    ...governs,
  ];
}

const sentence = (words: string): string =>
  /[.!?]$/.test(words) ? capital(words) : `${capital(words)}.`;

function approvals(record: DecisionRecord, surface: RecordedSurface): readonly string[] {
  const stages = surface.stages.map(
    ({ stage, by, role, at }) => `${capital(stage)}: ${personWords(by, role)}, ${momentWords(at)}.`,
  );
  const { required, standing, license, status } = surface.sign_off;
  const signed = record.timeline
    .filter(({ words }) => /^(Sign-off|Engineer)/.test(words))
    .map(
      ({ words, by, role, at }) =>
        `${sentence(words)} ${personWords(by, role)}, ${momentWords(at)}.`,
    );
  const as = license
    ? [
        `License: ${license.name}, ${license.number}, ${license.jurisdiction}, expires ${momentWords(license.expires)}.`,
      ]
    : [];
  const needed =
    required.length === 0
      ? "Engineer's sign-off: not required."
      : `Engineer's sign-off: required; ${standing ?? 'not asked'}; ${statusWords(status)}.`;
  return [...stages, needed, ...signed, ...as];
}

function changes(surface: RecordedSurface): readonly string[] {
  const causes = new Map<string, { words: string; stages: string[] }>();
  for (const { stage, causes: each } of surface.stages) {
    for (const cause of each) {
      const words = `${factWords(cause.path)}: ${valueWords(cause.from)} became ${valueWords(cause.to)}, ${momentWords(cause.at)}, ${cause.by}${cause.reason ? `: ${cause.reason}` : ''}`;
      const known = causes.get(words);
      if (known) known.stages.push(stage);
      else causes.set(words, { words, stages: [stage] });
    }
  }
  const lines = [...causes.values()].map(
    ({ words, stages }) => `${words}. To be checked again: ${stages.join(', ')}.`,
  );
  const scope = surface.sign_off.differences.map(
    ({ path, from, to }) =>
      `In the scope of the sign-off: ${factWords(path)}: ${valueWords(from)} became ${valueWords(to)}.`,
  );
  return lines.length + scope.length === 0
    ? ['Nothing that these decisions read has changed.']
    : [...lines, ...scope];
}
