// Reminders as an iCalendar text (RFC 5545): one all-day event each, lines folded at 75 octets.

import type { Reminder } from './reminders.js';

/** `stamp`: when the text was made. The same reminder keeps its UID. */
export function calendarText(name: string, reminders: readonly Reminder[], stamp: Date): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Gauge Ledger//Reminders//EN',
    'CALSCALE:GREGORIAN',
    `NAME:${escaped(name)}`,
    ...reminders.flatMap((each) => eventLines(each, stamp)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines(
  { kind, about, job, number, name, falls_on, words }: Reminder,
  stamp: Date,
): readonly string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${kind}-${about}-${job ?? 'register'}@gauge-ledger.example`,
    `DTSTAMP:${stamp.toISOString().replace(/[-:]|\.\d{3}/g, '')}`,
    `DTSTART;VALUE=DATE:${falls_on.replaceAll('-', '')}`,
    `SUMMARY:${escaped(number === null ? words : `${number} ${name}: ${words}`)}`,
    `CATEGORIES:${escaped(kind)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** RFC 5545, 3.3.11. */
const escaped = (text: string): string =>
  text.replace(/[\\;,]/g, (each) => `\\${each}`).replace(/\r?\n/g, '\\n');

/** RFC 5545, 3.1: no line over 75 octets; a character is never cut. */
function folded(line: string): string {
  let octets = 0;
  return Array.from(line, (character) => {
    const size = Buffer.byteLength(character);
    if (octets + size > 75) {
      octets = 1 + size;
      return `\r\n ${character}`;
    }
    octets += size;
    return character;
  }).join('');
}
