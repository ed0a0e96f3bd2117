// Values as papers say them: facts by path, amounts with their unit, moments, prices.

import { momentWords } from '#drawings';
import { number, prose } from '#jobs';

/** "surface/s1/support-spacings" → "Support spacings"; a site's or building's fact says so. */
export function factWords(path: string): string {
  if (path.endsWith('#how')) return `How known: ${factWords(path.slice(0, -4)).toLowerCase()}`;
  const parts = path.split('/');
  const place =
    parts[0] === 'building'
      ? ` (building ${parts[1] ?? ''})`
      : parts[0] === 'site'
        ? ' (site)'
        : '';
  const own = parts[0] === 'surface' || parts[0] === 'building' ? parts.slice(2) : parts.slice(1);
  return capital(own.join(': ').replaceAll(/[-_]/g, ' ')) + place;
}

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
export const spaced = (word: string): string => word.replaceAll(/[-_]/g, ' ');

const UNITS: Readonly<Record<string, string>> = {
  'per-12': 'in 12',
  'usd/square': 'per square',
  degF: '°F',
  Kzt: '',
  W2: '',
  G: '',
  '': '',
};

export interface AmountLike {
  readonly v: string;
  readonly u: string;
}

/** "24.8 psf"; money "$ 340.00 per square". */
export function amountWords({ v, u }: AmountLike): string {
  const unit = UNITS[u] ?? u;
  return `${u.startsWith('usd') ? '$ ' : ''}${number(v)}${unit === '' ? '' : ` ${unit}`}`;
}

/** Any recorded value in words; steps of a calculation stand in a table of their own. */
export function valueWords(value: unknown): string {
  if (value === null || value === undefined) return 'not given';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string' || typeof value === 'number') return prose(String(value));
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(itemWords).join('; ');
  const given = value as Record<string, unknown>;
  if (typeof given['v'] === 'string' && typeof given['u'] === 'string')
    return amountWords(given as unknown as AmountLike);
  return Object.entries(given)
    .filter(
      ([key, each]) =>
        key !== 'steps' && each !== null && !(Array.isArray(each) && each.length === 0),
    )
    .map(([key, each]) => keyedWords(key, each))
    .join(', ');
}

/** "inward 16.00 psf" where the key ends in its unit. */
function keyedWords(key: string, value: unknown): string {
  const [, name, unit] = /^(.+)_(psf|in|ft|lb)$/.exec(key) ?? [];
  return name && unit && typeof value === 'string'
    ? `${spaced(name)} ${number(value)} ${unit}`
    : `${spaced(key)} ${valueWords(value)}`;
}

/** One of a list: a measured spacing, always in inches, says its zone. */
function itemWords(value: unknown): string {
  const { v, u, zone } = (value ?? {}) as { v?: unknown; u?: unknown; zone?: unknown };
  if (typeof v !== 'string' || u !== undefined) return valueWords(value);
  return typeof zone === 'string' ? `zone ${zone}: ${v} in` : `${v} in`;
}

export { momentWords };
export const personWords = (by: string, role: string): string => `${by} (${spaced(role)})`;

/** How a stage stands, in words. */
export const statusWords = (status: string): string =>
  status === 'needs-recheck' ? 'needs re-check' : spaced(status);

/** The day of a date or moment: "14 Feb 2026". */
export const dayWords = (at: string): string => momentWords(at.slice(0, 10));
