// What a sign-off speaks for: the inputs of a surface that carry its strength. Color, price and who
// recorded a value are not among them, so they never cost another engineer's review.

import type { Reads } from '../contract/events.js';
import { contentPath } from '../contract/fact-dictionary.js';
import { CONFIRMED_STAGES, type Job, type Surface } from '../job.js';
import { lookupIn } from '../lookup.js';

const OF_STAGES: Readonly<Record<string, readonly string[]>> = {
  style: ['profile', 'width'],
  coating: ['metal'],
  hazards: ['wind', 'snow', 'roof_live_psf'],
  substrate: ['substrate', 'open_framing'],
  gauge: ['thickness_in', 'grade', 'attachment'],
};

const NOT_STRENGTH = [
  'job/priorities',
  'site/water',
  'site/water-distance',
  'site/corrosivity',
  'site/design-stone',
  'site/class-4-asked',
  'site/animals-or-fertilizer',
];
const NOT_STRENGTH_FACTS = [
  'condensation-control',
  'underlayment',
  'asked-term-years',
  'weathertightness-asked',
  'over-doors-or-walks',
  'copper-or-lead-above',
  'masonry-after-panels',
  'treated-lumber-contact',
];

const carries = (path: string): boolean =>
  !path.endsWith('#how') &&
  !NOT_STRENGTH.includes(path) &&
  !NOT_STRENGTH_FACTS.includes(path.split('/').at(-1) ?? '') &&
  !isContent(path);

const isContent = (path: string): boolean =>
  path.startsWith('surface/') && path.split('/').length === 4;

/** Path → value of every input in scope, as it stands; what is not known is not in scope. */
export function scopeOf(job: Job, surface: Surface): Reads {
  const at = lookupIn(job);
  const facts = CONFIRMED_STAGES.flatMap((stage) =>
    Object.keys(surface.stages[stage].record?.reads ?? {}),
  ).filter(carries);
  const contents = Object.entries(OF_STAGES).flatMap(([stage, fields]) =>
    fields.map((f) => contentPath(surface.id, stage, f)),
  );
  return Object.fromEntries(
    [...new Set([...facts, ...contents])]
      .map((path) => [path, at(path)] as const)
      .filter(([, value]) => value !== null && value !== undefined),
  );
}
