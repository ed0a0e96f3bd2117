// The job list's filter: it lives in the address, says itself in words, and can be kept as a view.

import { AFTER_STAGES, label, STAGES } from '#jobs/contract';
import { capital } from '../parts/words.js';
import { FILTERS, type Filter, type FilterName } from './query.js';

export const STATES = ['Ready', 'Blocked', 'Waiting', 'Done'] as const;
export const STAGE_OPTIONS = [
  ...STAGES.map((value) => ({ value, label: capital(label(value)) })),
  { value: 'done', label: 'Ready to order' },
  ...AFTER_STAGES.map((value) => ({
    value,
    label: value === 'order' ? 'Order, changing' : capital(label(value)),
  })),
];
export const DUE_OPTIONS = [
  { value: 'overdue', label: 'Overdue' },
  { value: 'week', label: 'Within a week' },
];

/** "Stage: Substrate", for the line that says which filters apply. */
export function filterWords(
  name: FilterName,
  value: string,
  person: (id: string) => string,
): string {
  if (name === 'find') return `Contains “${value}”`;
  if (name === 'assigned') return `Person: ${person(value)}`;
  if (name === 'due')
    return `Due: ${DUE_OPTIONS.find((each) => each.value === value)?.label ?? value}`;
  if (name === 'state') return `State: ${value}`;
  return `Stage: ${STAGE_OPTIONS.find((each) => each.value === value)?.label ?? value}`;
}

export interface View {
  readonly name: string;
  readonly filter: Filter;
}

export const BUILT_IN = (me: string): readonly View[] => [
  { name: 'All jobs', filter: {} },
  { name: 'My jobs', filter: { assigned: me } },
  { name: 'Blocked', filter: { state: 'Blocked' } },
  { name: 'Waiting for an engineer', filter: { state: 'Waiting', stage: 'sign-off' } },
  { name: 'Overdue', filter: { due: 'overdue' } },
];

const KEY = 'saved views';
export const savedViews = (): readonly View[] => {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '[]') as View[];
  } catch {
    return [];
  }
};
export const saveView = (view: View): void =>
  localStorage.setItem(
    KEY,
    JSON.stringify([...savedViews().filter(({ name }) => name !== view.name), view]),
  );
export const dropView = (name: string): void =>
  localStorage.setItem(KEY, JSON.stringify(savedViews().filter((each) => each.name !== name)));

export const sameFilter = (a: Filter, b: Filter): boolean =>
  FILTERS.every((name) => (a[name] ?? '') === (b[name] ?? ''));
