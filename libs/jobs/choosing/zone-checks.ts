// One zone of one option: the panel and its attachment, each demand against capacity with its source.
// Where no source gives a number, the reason stands in `missing` and there is none.

import {
  beamCoefficients,
  designStresses,
  E_STEEL,
  feet,
  governing,
  inches,
  panelStrength,
  spanLimits,
  steelGrade,
  type DemandBothWays,
} from '#engineering';
import type { ZoneFacts } from '#rules';
import type { CheckRecord, ZoneResult } from '../contract/evaluation.js';
import { attachmentCheckOf } from './attachment.js';
import { record } from './check-record.js';
import {
  assemblyFor,
  assemblyInward,
  assemblyOutward,
  assemblySource,
  chartFor,
  type ChartReading,
} from './capacity.js';
import type { Zone } from './demand.js';
import type { Option } from './options.js';
import { attachmentIn, type Question } from './question.js';
import { stepRecord } from './step-record.js';

export interface ZoneChecked {
  readonly result: ZoneResult;
  readonly facts: ZoneFacts;
}

export function checkZone(
  question: Question,
  option: Option,
  zone: Zone,
  demand: DemandBothWays,
): ZoneChecked {
  const made = panelAndTest(question, option, zone, demand);
  const attachment = made.attachment.length > 0 ? made.attachment : undefined;
  const own = attachment ?? attachmentCheckOf(question, option, zone, demand);
  const missing = typeof own === 'string' ? [...made.missing, own] : made.missing;
  const attached = typeof own === 'string' ? [] : own;
  const panel = made.panel;
  return {
    result: { zone: zone.zone, panel, attachment: attached, missing },
    facts: {
      zone: zone.zone,
      panel: worst(panel),
      attachment: worst(attached),
      missing,
      calculated_only:
        panel.some(({ calculated }) => calculated) || attached.some(({ calculated }) => calculated),
    },
  };
}

interface Made {
  readonly panel: readonly CheckRecord[];
  /** Where the test or chart covers the attachment too. */
  readonly attachment: readonly CheckRecord[];
  readonly missing: readonly string[];
}

function panelAndTest(
  question: Question,
  option: Option,
  zone: Zone,
  demand: DemandBothWays,
): Made {
  const assembly = assemblyFor(question, option, zone);
  if (typeof assembly !== 'string') {
    const source = assemblySource(assembly);
    const uplift = record(
      'uplift of the tested assembly',
      'outward',
      demand.outward,
      assemblyOutward(assembly),
      source,
    );
    const inward = assemblyInward(assembly);
    if (inward !== undefined)
      return {
        panel: [
          uplift,
          record('inward load of the tested assembly', 'inward', demand.inward, inward, source),
        ],
        attachment: [uplift],
        missing: [],
      };
    if (!question.open_framing) return { panel: [uplift], attachment: [uplift], missing: [] };
    const chart =
      zone.spacing_in === null
        ? 'no support spacing is recorded for this zone'
        : chartFor(question, option, zone.spacing_in);
    return typeof chart === 'string'
      ? { panel: [uplift], attachment: [uplift], missing: [`inward: ${chart}`] }
      : {
          panel: [uplift, ...chartChecks(chart, demand, ['inward'])],
          attachment: [uplift],
          missing: [],
        };
  }
  return question.open_framing
    ? spanning(question, option, zone, demand, assembly)
    : onDeck(question, option, zone, demand, assembly);
}

function spanning(
  question: Question,
  option: Option,
  zone: Zone,
  demand: DemandBothWays,
  noTest: string,
): Made {
  if (zone.spacing_in === null) return none('no support spacing is recorded for this zone');
  const chart = chartFor(question, option, zone.spacing_in);
  if (typeof chart === 'string') {
    const calculated =
      question.profile.fastening === 'exposed'
        ? calculatedPanel(question, option, zone.spacing_in, demand)
        : undefined;
    return calculated
      ? { panel: calculated, attachment: [], missing: [] }
      : none(`${chart}; ${noTest}`);
  }
  const panel = chartChecks(chart, demand, ['inward', 'outward']);
  const attachment = chart.chart.attachment_included
    ? panel.filter(({ direction }) => direction === 'outward')
    : [];
  return { panel, attachment, missing: [] };
}

/** On a solid deck inward load is the deck's; outward the panel spans its rows of screws. */
function onDeck(
  question: Question,
  option: Option,
  zone: Zone,
  demand: DemandBothWays,
  noTest: string,
): Made {
  if (question.profile.fastening === 'concealed') return none(noTest);
  const rows = attachmentIn(question, zone.zone)?.rows;
  if (!rows) return none(`no spacing of screw rows is proposed; ${noTest}`);
  const chart = chartFor(question, option, Number(rows.v));
  return typeof chart === 'string'
    ? none(`${chart}; ${noTest}`)
    : { panel: chartChecks(chart, demand, ['outward']), attachment: [], missing: [] };
}

const none = (...missing: readonly string[]): Made => ({ panel: [], attachment: [], missing });

function chartChecks(
  chart: ChartReading,
  demand: DemandBothWays,
  directions: readonly ('inward' | 'outward')[],
): readonly CheckRecord[] {
  return directions.flatMap((direction) => [
    record(
      'panel strength by its load chart',
      direction,
      demand[direction],
      chart[direction],
      chart.source,
    ),
    ...(direction === 'inward' && chart.deflection !== undefined
      ? [
          record(
            `deflection ${chart.chart.deflection_limit} by its load chart`,
            direction,
            demand.inward,
            chart.deflection,
            chart.source,
          ),
        ]
      : []),
  ]);
}

const DEFLECTION_N = 180;

/** The effective-width calculation from the outline: through-fastened panels in bending only. */
function calculatedPanel(
  question: Question,
  option: Option,
  span_in: number,
  demand: DemandBothWays,
): readonly CheckRecord[] | undefined {
  const { profile, width, longest_piece_ft } = question;
  const grade = steelGrade(option.grade);
  if (!profile.outline || option.metal !== 'steel' || !grade.ok) return undefined;
  const strength = panelStrength({
    outline: profile.outline as never,
    cover: inches(Number(width)),
    t: inches(option.thickness_in),
    Fy: designStresses(grade.value).Fy,
    E: E_STEEL,
    edition: 'S100-16',
    bearing: inches(2),
    fastened: true,
  });
  if (!strength.ok) return undefined;
  const spans = Math.max(
    1,
    Math.min(3, Math.floor(((longest_piece_ft ?? 0) * 12) / span_in + 1e-9)),
  );
  const beam = beamCoefficients(spans);
  return (['inward', 'outward'] as const).map((direction) => {
    const least = governing(
      spanLimits(strength.value, beam, feet(span_in / 12), direction, DEFLECTION_N),
    );
    return record(
      `${least.limitState}, calculated`,
      direction,
      demand[direction],
      least.load,
      'calculated from the outline, AISI S100-16',
      true,
      least.steps,
    );
  });
}

function worst(checks: readonly CheckRecord[]): ZoneFacts['panel'] {
  let found: CheckRecord | undefined;
  for (const each of checks)
    if (!found || Number(each.utilization) > Number(found.utilization)) found = each;
  if (!found) return undefined;
  const utilization = Number(found.utilization);
  return {
    utilization: found.passes ? Math.min(utilization, 1) : utilization,
    limit_state: `${found.limit_state} (${found.direction})`,
  };
}
