// A take-off as pages see it: in few words with the job, and whole on its own page.

import type { Catalogue } from '../contract/catalogue.js';
import type { TakeOffSheet, TakeOffView } from '../contract/take-off.js';
import type { Job } from '../job.js';
import { linesOf } from './lines.js';
import type { TakeOffState } from '../job.js';
import { causeWords } from './words.js';

export function takeOffView({
  surface,
  number,
  asked,
  result,
  by,
  at,
  causes,
}: TakeOffState): TakeOffView {
  return {
    surface,
    number,
    recorded: { by, at },
    measured_from: asked.measured_from,
    stands: causes.length === 0 ? 'current' : 'stale',
    stale_because: [...new Set(causes.map(causeWords))],
    pieces: result.totals.pieces,
    area_ft2: result.totals.area_ft2,
    longest_in: result.pieces[0]?.length_in ?? '0',
  };
}

/** undefined where the surface has none. */
export function takeOffSheet(
  job: Job,
  surface: string,
  catalogue: Catalogue | null,
): TakeOffSheet | undefined {
  const state = job.takeOffs[surface];
  const of = job.surfaces[surface];
  if (!state || !of) return undefined;
  const number = Object.keys(job.surfaces).indexOf(surface) + 1;
  return {
    ...takeOffView(state),
    asked: state.asked,
    result: state.result,
    lines: linesOf(of, number, state.result, catalogue),
    causes: state.causes,
  };
}
