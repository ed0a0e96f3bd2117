// The attachment of one zone where no test or chart covers it: the fastener's own tested load, or
// screws by calculation. Clips bear only what a test says.

import {
  designStresses,
  fastenerDemand,
  inches,
  ksi,
  psf,
  pounds,
  screwCapacity,
  steelGrade,
  woodCapacity,
  type DemandBothWays,
} from '#engineering';
import type { Fastener } from '../contract/catalogue.js';
import type { CheckRecord, StepRecord } from '../contract/evaluation.js';
import type { Zone } from './demand.js';
import type { Option } from './options.js';
import { attachmentIn, type Question } from './question.js';
import { record } from './check-record.js';
import { keptForQuestion } from './kept.js';
import { stepRecord } from './step-record.js';

interface Bears {
  readonly lb: number;
  readonly limitState: string;
  readonly source: string;
  readonly calculated: boolean;
  readonly steps: readonly StepRecord[];
}

/** The checks, or why there is no number. */
export function attachmentCheckOf(
  question: Question,
  option: Option,
  zone: Zone,
  demand: DemandBothWays,
): readonly CheckRecord[] | string {
  const here = attachmentIn(question, zone.zone);
  if (!here) return 'no attachment is proposed for this zone';
  const fastener = question.catalogue.fasteners.find(
    ({ id }) => id === question.attachment.fastener,
  );
  if (!fastener) return `fastener ${question.attachment.fastener} is not in the catalogue edition`;
  const along = question.open_framing
    ? zone.spacing_in
    : here.rows
      ? Number(here.rows.v)
      : Number(question.width);
  if (along === null) return 'no support spacing is recorded for this zone';
  const bears = kept(question, `${option.id} ${fastener.id}`, () =>
    fastenerBears(question, option, fastener),
  );
  if (typeof bears === 'string') return bears;
  // On open framing a clip stands at each support and holds one panel width; a screw, its own spacing.
  const clipAtSupport = fastener.kind === 'clip' && question.open_framing;
  const across = clipAtSupport ? question.width : here.spacing.v;
  const lb = fastenerDemand(psf(demand.outward), inches(along), inches(Number(across)));
  const source = `${bears.source}, one ${fastener.kind} on ${along} in by ${across} in`;
  return bears.map(({ limitState, lb: capacity, calculated, steps }) =>
    record(limitState, 'outward', lb, capacity, source, calculated, steps, 'lb'),
  );
}

type Borne = (readonly Bears[] & { source: string }) | string;

/** What a fastener bears is the same in every zone of an option. */
const kept = keptForQuestion<Borne>();

function fastenerBears(question: Question, option: Option, fastener: Fastener): Borne {
  const tested = testedLoad(question, fastener);
  if (tested) return withSource([tested]);
  if (fastener.kind === 'clip')
    return `no test of ${fastener.name} in this substrate: a clip bears only what a test says`;
  return calculatedLoad(question, option, fastener);
}

const withSource = (bears: readonly Bears[]) =>
  Object.assign([...bears], { source: bears[0]?.source ?? '' });

function testedLoad(question: Question, fastener: Fastener): Bears | undefined {
  const thick =
    question.support_thickness_in ?? question.deck_thickness_in ?? question.bite_in ?? 0;
  const row = fastener.tested?.find(
    ({ into, least_thickness }) =>
      into === question.substrate &&
      (least_thickness === undefined || Number(least_thickness.v) <= thick),
  );
  return (
    row && {
      lb: Number(row.allowable.v),
      limitState: `${fastener.kind} by test`,
      source: `${row.source.document}, ${row.source.edition}`,
      calculated: false,
      steps: [],
    }
  );
}

/** Screws by AISI S100 and the wood specification, from what is recorded of the support. */
function calculatedLoad(question: Question, option: Option, fastener: Fastener): Borne {
  const d = Number(fastener.diameter?.v ?? NaN);
  const dw = Number(fastener.washer_diameter?.v ?? NaN);
  const grade = steelGrade(option.grade);
  if (!(d > 0 && dw > 0))
    return `${fastener.name} has no test, and no diameter and washer to calculate from`;
  if (option.metal !== 'steel' || !grade.ok)
    return `${fastener.name} has no test, and pull-over is calculated for steel of a known grade only`;
  const head = {
    edition: 'S100-16' as const,
    t1: inches(option.thickness_in),
    Fu1: designStresses(grade.value).Fu,
    dw: inches(dw),
  };
  const {
    support_thickness_in: t2,
    support_tensile_ksi: Fu2,
    wood_specific_gravity: G,
    bite_in,
  } = question;
  const outcome =
    t2 !== undefined && Fu2 !== undefined
      ? screwCapacity({ ...head, d: inches(d), t2: inches(t2), Fu2: ksi(Fu2) })
      : G !== undefined && bite_in !== undefined
        ? woodCapacity(
            {
              fastener: 'wood-screw',
              D: inches(d),
              G,
              threadLength: inches(bite_in),
              durationFactor: 1.6,
            },
            head,
          )
        : undefined;
  if (!outcome)
    return `${fastener.name} has no test in this substrate, and the support is not recorded well enough to calculate (steel thickness and strength, or wood and bite)`;
  if (!outcome.ok)
    return outcome.faults.map(({ message }) => `${fastener.name}: ${message}`).join('; ');
  return withSource([
    {
      lb: pounds(outcome.value.capacity),
      limitState: `${outcome.value.governs}, calculated`,
      source: 'calculated',
      calculated: true,
      steps: outcome.steps.map(stepRecord),
    },
  ]);
}
