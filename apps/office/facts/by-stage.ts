// Which facts belong beside which stage, so that one question is asked at a time.

import { factDefinition, FACT_NAMES, factPath } from '#jobs/contract';
import type { FactName, FactView, JobView, Stage, SurfaceView } from '#jobs/contract';

export const STAGE_FACTS: Readonly<Record<Stage, readonly FactName[]>> = {
  style: ['slope', 'area', 'longest-piece', 'substrate', 'weathertightness-asked'],
  coating: [
    'corrosivity',
    'water',
    'water-distance',
    'animals-or-fertilizer',
    'corrosive-inside-protected',
    'asked-term-years',
    'copper-or-lead-above',
    'masonry-after-panels',
    'reglet-bare-in-wet-mortar',
    'cool-roof-asked',
    'reflectance-shown',
    'trim-bend-radius',
  ],
  hazards: [
    'exposure',
    'wind-speed',
    'topographic-factor',
    'elevation',
    'ground-snow',
    'ground-snow-basis',
    'winter-wind',
    'design-stone',
    'class-4-asked',
    'mean-roof-height',
    'width',
    'length',
    'roof-shape',
    'roof-slope',
    'overhang',
    'eave-to-ridge',
    'risk-category',
    'enclosure',
    'any-side-open',
    'doors-open-in-storms',
    'over-doors-or-walks',
    'snow-retention',
    'snow-retention-utilization',
  ],
  substrate: [
    'substrate',
    'reroof',
    'shingle-layers',
    'old-roof-left',
    'deck-thickness',
    'support-thickness',
    'support-tensile-strength',
    'wood-specific-gravity',
    'fastener-bite',
    'fastener-metal',
    'support-spacings',
    'framing-sound',
    'treated-lumber-contact',
    'inside-air',
    'condensation-control',
    'underlayment',
    'removes-bracing-sheets',
    'framing-added',
  ],
  gauge: ['residential', 'fixed-lines', 'dent-exclusion-shown', 'oil-canning-disclosed'],
  'sign-off': [
    'sign-off-asked',
    'permit-asked',
    'permit-question-answered',
    'association-asked',
    'small-job-acknowledged',
  ],
};

export interface FactSlot {
  readonly name: FactName;
  /** null for the site and the sale; else the building or surface id. */
  readonly on: string | null;
  readonly path: string;
  readonly fact: FactView | undefined;
}

/** The facts of one stage of one surface, known or not. */
export function slotsFor(job: JobView, surface: SurfaceView, stage: Stage): readonly FactSlot[] {
  return STAGE_FACTS[stage].map((name) => slot(job, name, surface));
}

/** What the office settles before an order: proposal, deposit, approvals, limits, warranty texts. */
export const SALE = 'sale';

/** Every fact of the site (null), of the sale, of one building or of one surface. */
export function slotsOn(job: JobView, thing: string | null): readonly FactSlot[] {
  const has = (list: readonly { readonly id: string }[]) => list.some(({ id }) => id === thing);
  const on = has(job.buildings)
    ? 'building'
    : has(job.surfaces)
      ? 'surface'
      : thing === SALE
        ? 'job'
        : 'site';
  const id = on === 'building' || on === 'surface' ? thing : null;
  return FACT_NAMES.filter((name) => factDefinition(name).on === on).map((name) =>
    found(job, name, id, factPath(on, id, name)),
  );
}

function slot(job: JobView, name: FactName, surface: SurfaceView): FactSlot {
  const { on } = factDefinition(name);
  const id = on === 'site' ? null : on === 'building' ? surface.building : surface.id;
  return found(job, name, id, factPath(on, id, name));
}

const found = (job: JobView, name: FactName, on: string | null, path: string): FactSlot => ({
  name,
  on,
  path,
  fact: job.facts.find((each) => each.path === path),
});
