// One zone of one option: the panel and its attachment, each demand against capacity with its source.
// Where no source gives a number, the reason stands in `missing` and there is none.

import type { DemandBothWays } from '#engineering';
import type { ZoneFacts } from '#rules';
import type { CheckRecord, ZoneResult } from '../contract/evaluation.js';
import { attachmentCheckOf } from './attachment.js';
import { calculatedPanel } from './calculated-panel.js';
import { record } from './check-record.js';
import {
  assemblyFor,
  assemblyInward,
  assemblyOutward,
  assemblySource,
  chartFor,
  NO_CHART,
  type ChartReading,
} from './capacity.js';
import type { Zone } from './demand.js';
import type { Option } from './options.js';
import { attachmentIn, type Question } from './question.js';

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
          panel: [uplift, ...chartInward(chart, demand)],
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
      chart === NO_CHART ? calculatedPanel(question, option, zone.spacing_in, demand) : undefined;
    return calculated
      ? { panel: calculated, attachment: [], missing: [] }
      : none(`${chart}; ${noTest}`);
  }
  const outward = chartOutward(chart, demand);
  const panel = [...chartInward(chart, demand), outward];
  return { panel, attachment: chart.chart.attachment_included ? [outward] : [], missing: [] };
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
    : { panel: [chartOutward(chart, demand)], attachment: [], missing: [] };
}

const none = (...missing: readonly string[]): Made => ({ panel: [], attachment: [], missing });

function chartInward(chart: ChartReading, demand: DemandBothWays): readonly CheckRecord[] {
  const { inward, deflection, source } = chart;
  const strength = record(BY_CHART, 'inward', demand.inward, inward, source);
  if (deflection === undefined) return [strength];
  const limit = `deflection ${chart.chart.deflection_limit} by its load chart`;
  return [strength, record(limit, 'inward', demand.inward, deflection, source)];
}

const chartOutward = (chart: ChartReading, demand: DemandBothWays): CheckRecord =>
  record(BY_CHART, 'outward', demand.outward, chart.outward, chart.source);

const BY_CHART = 'panel strength by its load chart';

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
