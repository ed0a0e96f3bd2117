// How a job of the demonstration is told: who says what, in order.

import type { CommandInput, FactEntry } from '#jobs/contract';
import { CREW, ENGINEER, MANAGER, OFFICE } from './people.js';

export const ACTORS = { office: OFFICE, manager: MANAGER, crew: CREW, engineer: ENGINEER } as const;
export type Actor = keyof typeof ACTORS;

/** The packet's digest is known only once the sign-off is asked. */
type PacketAnswer = Omit<Extract<CommandInput, { type: 'answer-sign-off' }>, 'packet'>;
export type Step = readonly [Actor, CommandInput | PacketAnswer];

export interface InventedParty {
  readonly id: string;
  readonly kind: 'person' | 'site';
  readonly details: {
    readonly name: string;
    readonly address?: string;
    readonly phone?: string;
    readonly email?: string;
  };
}

export interface InventedJob {
  readonly id: string;
  readonly parties: readonly InventedParty[];
  readonly steps: readonly Step[];
}

export const demonstrationId = (n: number): string =>
  `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;

type How = FactEntry['how'];
type Value = FactEntry['value'];
type Told = readonly [fact: FactEntry['fact'], value: Value];

/** Facts of one thing that are known the same way. */
export const facts = (
  on: string | null,
  how: How,
  source: string | undefined,
  ...told: readonly Told[]
): FactEntry[] =>
  told.map(([fact, value]) => ({
    on,
    fact,
    value,
    how,
    ...(source === undefined ? {} : { source }),
  }));

export const amount = <U extends string>(v: string | number, u: U) => ({ v: String(v), u });

/** Wind pressures of one zone, psf: toward the surface, and away from it. */
export const zone = (
  name: string,
  part: 'roof' | 'overhang' | 'wall',
  inward: string,
  outward: string,
) => ({ zone: name, part, inward: amount(inward, 'psf'), outward: amount(outward, 'psf') });

/** Attachment of one zone: clips along the panel, or screws across it at each support. */
export const spaced = (name: string, spacing: string) => ({
  zone: name,
  spacing: amount(spacing, 'in'),
});
