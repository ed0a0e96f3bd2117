// What a small form asks, as a list; what was typed, its faults, and its values read back.

import type { Catalogue, CommandInput, JobView, Role } from '#jobs/contract';
import type { StoredFile } from '../api/files.js';
import type { FieldErrors, Option } from '../parts/fields.js';
import { capital, parseDay } from '../parts/words.js';
import { decimal } from '../stages/hazards-entry.js';
import { NAMES_OF_KINDS } from './kinds.js';

export interface Ask {
  readonly id: string;
  readonly label: string;
  readonly kind: keyof typeof NAMES_OF_KINDS;
  readonly options?: readonly Option[];
  readonly hint?: string;
  readonly unit?: string;
  readonly optional?: true;
}

export interface Typed {
  readonly values: Readonly<Record<string, string>>;
  readonly files: Readonly<Record<string, readonly StoredFile[]>>;
}

/** One command after the gauge as a form of its own. */
export interface AfterForm {
  readonly title: string;
  readonly roles: readonly Role[];
  readonly button: string;
  readonly saved: string;
  readonly lead?: string;
  /** Why it cannot be filled in yet; null where it can. */
  readonly missing: (job: JobView) => string | null;
  /** Values that are known already. `about` is what the link named. */
  readonly start?: (job: JobView, about: string) => Readonly<Record<string, string>>;
  readonly asks: (
    job: JobView,
    values: Readonly<Record<string, string>>,
    catalogue?: Catalogue,
  ) => readonly Ask[];
  readonly command: (given: Given, job: JobView) => CommandInput;
  /**
   * The rules of a gate are asked while it is filled in. "open": they may be set aside or acknowledged
   * with it; "firm": what is so is recorded, and no rule is set aside for it.
   */
  readonly gated?: 'open' | 'firm';
  /** What is signed or issued is reviewed first; this says how it can be corrected. */
  readonly correct?: string;
  readonly roofWork?: true;
}

export type Given = ReturnType<typeof givenIn>;

export const givenIn = ({ values, files }: Typed) => {
  const text = (id: string): string => values[id]?.trim() ?? '';
  return {
    text,
    day: (id: string): string => parseDay(text(id)) ?? '',
    count: (id: string): number => Number(text(id) || 0),
    decimal: (id: string): string => decimal(text(id)) ?? '',
    list: (id: string): string[] =>
      text(id)
        .split('\n')
        .map((each) => each.trim())
        .filter(Boolean),
    files: (id: string) => (files[id] ?? []).map(({ digest, name }) => ({ digest, name })),
  };
};

export const faultsOf = (asks: readonly Ask[], typed: Typed): FieldErrors =>
  asks.flatMap((ask) => {
    const message = faultOf(ask, typed);
    return message === null ? [] : [{ field: fieldOf(ask), message }];
  });

/** The first control of a group, or the control itself. */
export const fieldOf = ({ id, kind }: Pick<Ask, 'id' | 'kind'>): string =>
  kind === 'choice' || kind === 'many' ? `${id}-0` : id;

function faultOf({ id, label, kind, optional }: Ask, { values, files }: Typed): string | null {
  const text = values[id]?.trim() ?? '';
  const empty = kind === 'files' ? (files[id] ?? []).length === 0 : text === '';
  if (empty) return optional ? null : `${capital(label)}: ${NAMES_OF_KINDS[kind]}`;
  if (kind === 'day' && !parseDay(text)) return `${label}: enter the date like 14 Feb 2026`;
  if (kind === 'count' && !/^\d{1,6}$/.test(text)) return `${label}: enter a whole number`;
  if (kind === 'decimal' && !decimal(text)) return `${label}: enter a number in digits, like 24.8`;
  return null;
}

/** What was typed, for the review: words beside words. */
export const wordsOf = (asks: readonly Ask[], { values, files }: Typed) =>
  asks.flatMap(({ id, label, kind, options, unit }): (readonly [string, string])[] => {
    const text = values[id]?.trim() ?? '';
    if (kind === 'files')
      return [[label, (files[id] ?? []).map(({ name }) => name).join(', ') || 'none']];
    if (text === '') return [];
    const chosen = (one: string) => options?.find(({ value }) => value === one)?.label ?? one;
    return [[label, `${text.split('\n').map(chosen).join('; ')}${unit ? ` ${unit}` : ''}`]];
  });
