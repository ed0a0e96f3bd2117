// Which things that fall due are mailed to whom, and how the mail reads. Knows no clock.

import type { Role } from '#jobs/contract';
import type { Reminder } from './reminders.js';

/** Days before the day that a thing is mailed; it is not mailed any more long after it. */
const AHEAD: Readonly<Record<string, number>> = {
  'sign-off-asked': 0,
  'sign-off-waiting': 3,
  'license-expiring': 30,
  'quote-expiring': 7,
  delivery: 3,
  'tear-off-due': 3,
  'registration-window': 21,
  'term-ends': 60,
};
export const MOST_AHEAD = Math.max(...Object.values(AHEAD));
export const LATE_DAYS = 30;
const MOST_LINES = 100;

export interface Addressed extends Reminder {
  /** Whom it is asked of, besides the office: an engineer, the holder of a license. */
  readonly asked?: string | null;
  /** Who has the job. */
  readonly assigned?: string | null;
}
export interface Addressee {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
}

export function dayPlus(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

export const isDue = ({ kind, falls_on }: Reminder, today: string): boolean =>
  falls_on <= dayPlus(today, AHEAD[kind] ?? 0) && falls_on >= dayPlus(today, -LATE_DAYS);

/** The person asked; of a job the one who has it, or every project manager; the crew for a tear-off. */
export function isFor(due: Addressed, { id, roles }: Addressee): boolean {
  if (due.asked === id) return true;
  if (due.kind === 'sign-off-asked') return false;
  if (due.kind === 'tear-off-due' && roles.includes('crew-lead')) return true;
  return due.assigned ? due.assigned === id : roles.includes('project-manager');
}

export function mailText(
  company: string,
  due: readonly Addressed[],
): { subject: string; text: string } {
  const asked = due.filter(({ kind }) => kind === 'sign-off-asked');
  const subject =
    asked.length === due.length && asked.length > 0
      ? `${company}: ${asked.length === 1 ? 'a sign-off is asked of you' : `${asked.length} sign-offs are asked of you`}`
      : `${company}: ${due.length === 1 ? 'one thing falls due' : `${due.length} things fall due`}`;
  const sorted = [...due].sort((a, b) => a.falls_on.localeCompare(b.falls_on));
  const lines = sorted.slice(0, MOST_LINES).map(line);
  const more =
    due.length > MOST_LINES
      ? [`and ${due.length - MOST_LINES} more, in the list of reminders.`]
      : [];
  return { subject, text: [...lines, ...more, '', FOOT].join('\n') };
}

const line = ({ falls_on, number, name, words }: Reminder): string =>
  `${falls_on}  ${number === null ? '' : `${number} ${name}: `}${words}`;

const FOOT =
  'Each thing is mailed once. To stop these mails, choose so under your name, "Password and mail". An office aid: local code and the authority having jurisdiction govern.';
