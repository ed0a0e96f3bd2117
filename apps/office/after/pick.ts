// What small forms choose among: the surfaces, orders and documents of a job, by their names.

import type { JobView, OrderView, RevisionView } from '#jobs/contract';
import { label } from '#jobs/contract';
import type { Option } from '../parts/fields.js';
import { capital } from '../parts/words.js';

export const surfaceName = (job: JobView, id: string): string =>
  job.surfaces.find((each) => each.id === id)?.name ?? id;

export const surfaceOptions = (job: JobView): readonly Option[] =>
  job.surfaces
    .filter(({ withdrawn }) => withdrawn === null)
    .map(({ id, name }) => ({ value: id, label: name }));

export const orderOptions = (job: JobView): readonly Option[] =>
  job.after.orders.map(({ order }) => ({ value: order, label: `Order ${order}` }));

export const warrantyOptions = (job: JobView): readonly Option[] =>
  job.after.warranties.map(({ document, kind }) => ({
    value: document,
    label: `Document ${document}, ${label(kind)}`,
  }));

export const claimOptions = (job: JobView): readonly Option[] =>
  job.after.claims
    .filter(({ decided }) => decided === null)
    .map((each) => ({
      value: each.claim,
      label: `Claim ${each.claim}, ${label(each.kind)}, ${surfaceName(job, each.surface)}`,
    }));

export const optionsOf = (words: readonly string[]): readonly Option[] =>
  words.map((each) => ({ value: each, label: capital(label(each)) }));

export const YES_NO: readonly Option[] = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
];

/** The only one where there is one, what the link named where it is among them, else nothing. */
export const first = (options: readonly Option[], about = ''): string =>
  options.find(({ value }) => value === about)?.value ??
  (options.length === 1 ? (options[0]?.value ?? '') : '');

export const orderOf = (job: JobView, id: string | undefined): OrderView | undefined =>
  job.after.orders.find(({ order }) => order === id);
export const inForce = (order: OrderView | undefined): RevisionView | undefined =>
  order?.revisions.find(({ standing }) => standing === 'in force');

/** An id that does not stand yet: 1, 2, … or s1, s2, … after a letter. */
export const nextId = (letter: string, taken: readonly string[]): string => {
  let n = taken.length + 1;
  while (taken.includes(`${letter}${n}`)) n += 1;
  return `${letter}${n}`;
};
