// What each job of the large demonstration is to be: its number, day, kind and parties, all from the
// seed and its place in the row.

import { createHash } from 'node:crypto';
import type { FileRef } from '#jobs/contract';
import { commit } from '../../api/people/parties.js';
import { dayPlus, daysFrom, dice, FIRST_DAY, LAST_DAY } from './dice.js';
import { KINDS } from './kinds.js';
import type { Plan } from './chapter.js';

export interface InventedDetails {
  readonly id: string;
  readonly kind: 'person' | 'site';
  readonly details: { readonly name: string; readonly address?: string; readonly email?: string };
  readonly salt: Uint8Array<ArrayBuffer>;
  readonly commitment: string;
}
export interface Planned {
  readonly plan: Plan;
  readonly parties: readonly InventedDetails[];
}

const PLACES = [
  'Sampleton',
  'Coastville',
  'Northfield',
  'Milltown',
  'Ridge',
  'Lakeside',
  'Quarry Hill',
] as const;
const HOUSES = [
  'Alder',
  'Birch',
  'Cedar',
  'Dogwood',
  'Elm',
  'Fir',
  'Hazel',
  'Larch',
  'Maple',
  'Oak',
  'Pine',
  'Rowan',
  'Spruce',
] as const;

/** The `n`th of `jobs`, spread evenly over the years, oldest first. */
export function planned(n: number, jobs: number, seed: number, paper: FileRef): Planned {
  const chance = dice(seed * 100_003 + n);
  const kind = chance.pick(KINDS);
  const opened = dayPlus(FIRST_DAY, Math.floor((n * daysFrom(FIRST_DAY, LAST_DAY)) / jobs));
  const place = chance.pick(PLACES);
  const household = `${chance.pick(HOUSES)} ${kind.dwelling ? 'household' : 'Company'} ${n + 1}`;
  const customer = details(seed, n, 1, 'person', {
    name: household,
    email: `customer${n + 1}@nine-years.example`,
  });
  const site = details(seed, n, 2, 'site', {
    name: `${chance.pick(kind.names)}, ${place}`,
    address: `${n + 1} Example Road, ${place}`,
  });
  const plan: Plan = {
    id: idOf(seed, n, 0),
    kind,
    opened,
    dice: chance,
    turn: n,
    paper,
    number: `${opened.slice(0, 4)}-L${String(n + 1).padStart(4, '0')}`,
    name: site.details.name,
    customer: { id: customer.id, commitment: customer.commitment },
    site: { id: site.id, commitment: site.commitment },
  };
  return { plan, parties: [customer, site] };
}

function details(
  seed: number,
  n: number,
  which: number,
  kind: InventedDetails['kind'],
  of: InventedDetails['details'],
): InventedDetails {
  // Of invented people nothing can be guessed that matters; so the salt may come from the seed.
  const salt = new Uint8Array(hash(`salt ${seed} ${n} ${which}`).subarray(0, 16));
  return { id: idOf(seed, n, which), kind, details: of, salt, commitment: commit(salt, of) };
}

const hash = (text: string): Buffer => createHash('sha256').update(text).digest();

function idOf(seed: number, n: number, which: number): string {
  const hex = hash(`id ${seed} ${n} ${which}`).toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-7${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
