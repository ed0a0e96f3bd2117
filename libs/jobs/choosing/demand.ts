// What each zone asks of the panel: allowable-stress combinations of its wind with snow, roof live
// load and the panel's own weight. Snow counts in full normal to the panel, which is never less.

import {
  amount,
  cite,
  governingDemand,
  panelDemand,
  psf,
  step,
  display,
  type AsceEdition,
  type DemandBothWays,
  type PanelLoads,
  type Psf,
  type Step,
} from '#engineering';
import type { ZoneDemand } from '../contract/evaluation.js';
import type { Option } from './options.js';
import { EVERY_ZONE, spacingIn, type Question } from './question.js';
import { stepRecord } from './step-record.js';

/** Least roof live load where none is entered: 20 psf, unreduced. */
const LEAST_ROOF_LIVE_PSF = 20;
const WIND_ASD = 0.6;
const SNOW_722 = 0.7;

export interface Zone {
  readonly zone: string;
  readonly part: 'roof' | 'overhang' | 'wall';
  readonly spacing_in: number | null;
  readonly windInward: Psf;
  readonly windOutward: Psf;
}

const WALLS = ['wall', 'fascia', 'interior'];
export const isWall = (question: Question): boolean =>
  WALLS.includes(question.facts.kind ?? 'roof');

/** The zones of a surface with their wind at strength level; one without wind where none applies. */
export function zonesOf(question: Question): readonly Zone[] {
  const { wind } = question;
  const factor = wind.basis === 'ASD' ? 1 / WIND_ASD : 1;
  if (wind.zones.length === 0) {
    const part = isWall(question) ? 'wall' : 'roof';
    return [
      {
        zone: EVERY_ZONE,
        part,
        spacing_in: spacingIn(question, EVERY_ZONE),
        windInward: psf(0),
        windOutward: psf(0),
      },
    ];
  }
  return wind.zones.map(({ zone, part, inward_psf, outward_psf }) => ({
    zone,
    part,
    spacing_in: spacingIn(question, zone),
    windInward: psf(Number(inward_psf) * factor),
    windOutward: psf(Number(outward_psf) * factor),
  }));
}

/** The governing demand on a zone, without steps: options are many, and one is printed. */
export const demandOn = (question: Question, zone: Zone, weight: Psf): DemandBothWays =>
  governingDemand(loadsOn(question, zone, weight));

function loadsOn(question: Question, zone: Zone, weight: Psf): PanelLoads {
  const wall = zone.part === 'wall';
  const edition = combinationEdition(question);
  return {
    edition,
    dead: wall ? psf(0) : weight,
    roofLive: wall ? psf(0) : psf(roofLive(question)),
    snow: wall ? psf(0) : psf(snowAtLevelOf(question, edition)),
    windInward: zone.windInward,
    windOutward: zone.windOutward,
  };
}

const roofLive = (question: Question): number =>
  question.roof_live_psf === null ? LEAST_ROOF_LIVE_PSF : Number(question.roof_live_psf);

function combinationEdition({ wind, snow }: Question): AsceEdition {
  const named = wind.edition ?? snow.edition ?? (snow.basis === 'strength' ? '7-22' : '7-16');
  return named as AsceEdition;
}

function snowAtLevelOf({ snow }: Question, edition: AsceEdition): number {
  const roof = Number(snow.roof_psf);
  const strength = edition === '7-22';
  if (strength === (snow.basis === 'strength')) return roof;
  return strength ? roof / SNOW_722 : roof * SNOW_722;
}

/** The zone's demand as it is kept: with the lightest and heaviest option the numbers hardly move. */
export function demandRecord(question: Question, zone: Zone, option: Option): ZoneDemand {
  const outcome = panelDemand(loadsOn(question, zone, option.weight));
  if (!outcome.ok)
    throw new Error(`zone ${zone.zone}: ${outcome.faults.map((f) => f.message).join('; ')}`);
  const { inward, outward } = outcome.value;
  return {
    zone: zone.zone,
    part: zone.part,
    inward: amount(inward, 2, 'psf'),
    outward: amount(outward, 2, 'psf'),
    support_spacing: zone.spacing_in === null ? null : amount(zone.spacing_in, 2, 'in'),
    source: [question.wind.source, question.snow.source].join('; '),
    steps: [...loadSteps(question, zone), ...outcome.steps].map(stepRecord),
  };
}

function loadSteps(question: Question, zone: Zone): readonly Step[] {
  const wall = zone.part === 'wall';
  const live = question.roof_live_psf === null ? 'least roof live load, none entered' : 'entered';
  return [
    step(
      'W inward',
      display(zone.windInward, 2),
      'psf',
      question.wind.basis === 'ASD' ? 'entered at ASD level, divided by 0.6' : 'strength level',
      cite('asce-7-16', '2.4'),
    ),
    step(
      'W outward',
      display(zone.windOutward, 2),
      'psf',
      question.wind.basis === 'ASD' ? 'entered at ASD level, divided by 0.6' : 'strength level',
      cite('asce-7-16', '2.4'),
    ),
    ...(wall
      ? []
      : [
          step(
            'L_r',
            display(roofLive(question), 2),
            'psf',
            live,
            cite('ibc-2021', 'Table 1607.1, from memory'),
          ),
        ]),
  ];
}
