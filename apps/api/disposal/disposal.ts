// What stands of erasures, legal holds and retention periods, as the entries of one stream tell it: an
// erasure is asked by one person and confirmed by another, and a hold keeps whom it covers from it.

import type { Recorded } from '#ledger';

export const DISPOSAL_STREAM = 'office/disposal';

export const KINDS = ['person', 'site'] as const;
export type PartyKind = (typeof KINDS)[number];

/** Why an erasure is asked; only what the law asks for goes before a retention period has ended. */
export const GROUNDS = {
  'asked-by-the-person': 'the person asked for it',
  'asked-by-law': 'the law asks for it',
  'no-longer-needed': 'no longer needed',
} as const;
export type Ground = keyof typeof GROUNDS;

/** What is done, by type of entry. The words of a hold stay for ever; those of a request can be erased. */
export interface Done {
  'hold-placed/1': { readonly hold: string; readonly on: Held; readonly why: string };
  'hold-released/1': { readonly hold: string; readonly why: string };
  'erasure-requested/1': {
    readonly request: string;
    readonly party: string;
    readonly ground: Ground;
  };
  'erasure-confirmed/1': { readonly request: string; readonly party: string };
  'erasure-withdrawn/1': { readonly request: string; readonly why: string };
  'retention-set/1': { readonly kind: PartyKind; readonly years: number | null };
}
export type DoneEvent = {
  [T in keyof Done]: { readonly type: T; readonly data: Done[T] };
}[keyof Done];

export interface Held {
  readonly kind: 'party' | 'job';
  readonly id: string;
}

export interface Act {
  readonly by: string;
  readonly at: string;
  readonly why?: string;
}

export interface Hold {
  readonly id: string;
  readonly on: Held;
  readonly placed: Act & { readonly why: string };
  readonly released: Act | null;
}

export interface ErasureRequest {
  readonly id: string;
  readonly party: string;
  readonly ground: Ground;
  readonly asked: Act;
  readonly confirmed: Act | null;
  readonly withdrawn: Act | null;
}

export interface Disposal {
  readonly holds: ReadonlyMap<string, Hold>;
  readonly requests: ReadonlyMap<string, ErasureRequest>;
  readonly years: Readonly<Record<PartyKind, number | null>>;
}

const NOTHING: Disposal = {
  holds: new Map(),
  requests: new Map(),
  years: { person: null, site: null },
};

export const disposalOf = (events: readonly Recorded[]): Disposal => events.reduce(after, NOTHING);

function after(was: Disposal, { type, data, by, recordedAt }: Recorded): Disposal {
  const event = { type, data } as DoneEvent;
  const act = { by: by.person, at: recordedAt };
  const holds = (id: string, hold: Hold) => ({ ...was, holds: new Map(was.holds).set(id, hold) });
  const requests = (id: string, request: ErasureRequest) => ({
    ...was,
    requests: new Map(was.requests).set(id, request),
  });
  switch (event.type) {
    case 'hold-placed/1': {
      const { hold: id, on, why } = event.data;
      return holds(id, { id, on, placed: { ...act, why }, released: null });
    }
    case 'hold-released/1': {
      const { hold: id, why } = event.data;
      return holds(id, { ...there(was.holds, id), released: { ...act, why } });
    }
    case 'erasure-requested/1': {
      const { request: id, party, ground } = event.data;
      return requests(id, { id, party, ground, asked: act, confirmed: null, withdrawn: null });
    }
    case 'erasure-confirmed/1': {
      const { request: id } = event.data;
      return requests(id, { ...there(was.requests, id), confirmed: act });
    }
    case 'erasure-withdrawn/1': {
      const { request: id, why } = event.data;
      return requests(id, { ...there(was.requests, id), withdrawn: { ...act, why } });
    }
    case 'retention-set/1':
      return { ...was, years: { ...was.years, [event.data.kind]: event.data.years } };
    default:
      throw new Error(`an entry of disposal is of an unknown type: ${type}`);
  }
}

function there<T>(all: ReadonlyMap<string, T>, id: string): T {
  const found = all.get(id);
  if (found === undefined)
    throw new Error(`an entry of disposal speaks of ${id}, which is not there`);
  return found;
}

export const standing = ({ holds }: Disposal): readonly Hold[] =>
  [...holds.values()].filter(({ released }) => released === null);

export const isOpen = ({ confirmed, withdrawn }: ErasureRequest): boolean =>
  confirmed === null && withdrawn === null;

/** The day on which a period of so many years after this moment has ended. */
export function endOf(since: Date, years: number): Date {
  const end = new Date(since);
  end.setUTCFullYear(end.getUTCFullYear() + years);
  return end;
}

export const yearsInWords = (years: number): string => (years === 1 ? '1 year' : `${years} years`);
