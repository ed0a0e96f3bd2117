// What the parts of the form share: what is typed, options in words, and lists that change by place.

import { label } from '#jobs/contract';
import type { FieldErrors, Option } from '../parts/fields.js';
import { capital } from '../parts/words.js';
import type { TakeOffTyped } from './typed.js';

export interface Fields {
  readonly typed: TakeOffTyped;
  readonly set: (change: Partial<TakeOffTyped>) => void;
  readonly errors: FieldErrors;
}

export const optionsFor = (words: readonly string[]): readonly Option[] =>
  words.map((value) => ({ value, label: capital(label(value)) }));

export const replaced = <T>(list: readonly T[], at: number, change: Partial<T>): readonly T[] =>
  list.map((each, i) => (i === at ? { ...each, ...change } : each));
export const without = <T>(list: readonly T[], at: number): readonly T[] =>
  list.filter((_, i) => i !== at);

export const STARTS: readonly Option[] = [
  { value: 'left', label: 'At the left edge, as one looks up the slope' },
  { value: 'right', label: 'At the right edge' },
  { value: 'centered', label: 'Centered: equal cut panels at both edges' },
];
