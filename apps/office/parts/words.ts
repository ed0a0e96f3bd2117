// How values are written for people: dates as "14 Feb 2026", a real minus sign, states in words.

import {
  factDefinition,
  label,
  MONTHS,
  number,
  plainDay,
  type Catalogue,
  type FactName,
  type StageStatus,
} from '#jobs/contract';

export { number, prose } from '#jobs/contract';

/** "14 Feb 2026" from 2026-02-14 or from a moment (in the reader's own time zone). */
export function day(text: string | null | undefined): string {
  if (!text) return '';
  if (text.length === 10) return plainDay(text);
  const at = new Date(text);
  return Number.isNaN(at.getTime())
    ? text
    : `${at.getDate()} ${MONTHS[at.getMonth()]} ${at.getFullYear()}`;
}

const two = (n: number): string => String(n).padStart(2, '0');

/** "14 Feb 2026, 09:30". */
export function moment(text: string | null | undefined): string {
  if (!text) return '';
  const at = new Date(text);
  return Number.isNaN(at.getTime())
    ? text
    : `${day(text)}, ${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** The calendar day in the reader's time zone, 2026-02-14. */
export const today = (at = new Date()): string =>
  `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;

/** "14 Feb 2026", "feb 14, 2026" or 2026-02-14 to 2026-02-14; undefined where it is no date. */
export function parseDay(text: string): string | undefined {
  const given = text.trim().toLowerCase().replaceAll(',', ' ').replace(/\s+/g, ' ');
  const iso = /^(\d{4})-(\d{2})-(\d{2})$/.exec(given);
  const dayFirst = /^(\d{1,2}) ([a-z]{3,9})\.? (\d{4})$/.exec(given);
  const monthFirst = /^([a-z]{3,9})\.? (\d{1,2}) (\d{4})$/.exec(given);
  const parts = iso
    ? [iso[1], Number(iso[2]), iso[3]]
    : dayFirst
      ? [dayFirst[3], monthNumber(dayFirst[2]), dayFirst[1]]
      : monthFirst
        ? [monthFirst[3], monthNumber(monthFirst[1]), monthFirst[2]]
        : [];
  const [year, month, date] = parts.map(Number);
  if (!year || !month || !date) return undefined;
  const at = new Date(Date.UTC(year, month - 1, date));
  return at.getUTCMonth() === month - 1 && at.getUTCDate() === date
    ? `${year}-${two(month)}-${two(date)}`
    : undefined;
}

const monthNumber = (name = ''): number =>
  MONTHS.findIndex((each) => each.toLowerCase() === name.slice(0, 3)) + 1;

const UNITS: Readonly<Record<string, string>> = {
  in: 'in',
  ft: 'ft',
  psf: 'psf',
  mph: 'mph',
  ft2: 'ft²',
  degF: '°F',
  lb: 'lb',
  'per-12': 'in 12',
  'usd/square': 'USD per square',
  usd: 'USD',
  Kzt: '',
  W2: '',
  G: '',
};
export const unit = (u: string): string => UNITS[u] ?? u;

const SPOKEN: Readonly<Record<string, string>> = {
  in: 'inches',
  ft: 'feet',
  psf: 'pounds per square foot',
  mph: 'miles per hour',
  lb: 'pounds',
  'per-12': 'inches of rise in 12',
  ft2: 'square feet',
  degF: 'degrees Fahrenheit',
};
/** The unit as it is said in a field's name. */
export const spokenUnit = (u: string): string => SPOKEN[u] ?? unit(u);

export const amount = (given: { readonly v: string; readonly u: string } | null): string =>
  given === null ? '' : `${number(given.v)} ${unit(given.u)}`.trim();

/** A recorded value in words, whatever its kind. */
export function value(given: unknown): string {
  if (given === null || given === undefined) return 'not known';
  if (given === true) return 'yes';
  if (given === false) return 'no';
  if (typeof given === 'string')
    return /^[a-z]+(-([a-z]+|\d+yr))+$/.test(given) ? label(given) : number(given);
  if (Array.isArray(given)) return spacings(given as readonly { zone?: string; v: string }[]);
  const object = given as Record<string, unknown>;
  if (typeof object['v'] === 'string' && typeof object['u'] === 'string') {
    return amount({ v: object['v'], u: object['u'] });
  }
  return JSON.stringify(given);
}

function spacings(lines: readonly { zone?: string; v: string }[]): string {
  if (lines.length === 0) return 'none';
  if (lines.some((each) => typeof each !== 'object' || each === null)) return lines.join(', ');
  const worst = Math.max(...lines.map(({ v }) => Number(v)));
  const list = lines.map(({ zone, v }) => (zone ? `${v} (${zone})` : v)).join(', ');
  return `${list} in; the worst, ${worst} in, counts`;
}

/** "surface/s1/slope" as "Slope (rise in 12)"; a path of a stage's content as "style: profile". */
export function pathWords(path: string): string {
  const parts = path.split('/');
  const name = parts.at(-1) ?? path;
  if (parts.length === 4) return `${label(parts[2] ?? '')}: ${name.replaceAll('_', ' ')}`;
  const definition = factDefinition(name as FactName) as { asks?: string } | undefined;
  return definition?.asks ?? name.replaceAll('_', ' ');
}

/** "1 job", "1,204 jobs". */
export const count = (n: number, one: string, many = `${one}s`): string =>
  `${n.toLocaleString('en-US')} ${n === 1 ? one : many}`;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const STATUS_WORDS: Readonly<Record<StageStatus, string>> = {
  'not-started': 'not started',
  confirmed: 'done',
  'needs-recheck': 'needs re-check',
  'not-needed': 'not needed',
  waiting: 'waiting for the engineer',
  declined: 'declined',
};

/** A fastener by its name in the catalogue; one that is not in it any more stays its id. */
export const fastenerName = (
  id: string,
  catalogue: Pick<Catalogue, 'fasteners'> | undefined,
): string => catalogue?.fasteners.find((each) => each.id === id)?.name ?? id;
