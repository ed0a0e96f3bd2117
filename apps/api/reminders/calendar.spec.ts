// The calendar text holds to RFC 5545: line ends, folding, escaping, all-day events with lasting UIDs.

import { expect, test } from '@jest/globals';
import { calendarText } from './calendar.js';

const reminder = {
  kind: 'term-ends',
  about: 'w1',
  job: 'job-1',
  number: '2026-0142',
  name: 'House; on the ridge, KS',
  falls_on: '2056-04-12',
  words:
    'The paint warranty w1 ends on 2056-04-12 – écrit assez long pour que la ligne soit pliée deux fois au moins, et encore un peu',
};
const text = calendarText('Reminders', [reminder], new Date('2026-11-25T09:00:00.000Z'));

test('every line ends in CRLF and has 75 octets at most; no character is cut', () => {
  const lines = text.split('\r\n');
  expect(lines.at(-1)).toBe('');
  expect(lines.every((line) => Buffer.byteLength(line) <= 75 && !line.includes('\n'))).toBe(true);
  expect(lines.filter((line) => line.startsWith(' ')).length).toBeGreaterThan(1);
  expect(text.replaceAll('\r\n ', '')).toContain(
    'SUMMARY:2026-0142 House\\; on the ridge\\, KS: The paint warranty w1 ends on 2056-04-12 – écrit',
  );
});

test('an event lasts its day and keeps its UID', () => {
  expect(text).toContain('DTSTART;VALUE=DATE:20560412\r\n');
  expect(text).toContain('DTSTAMP:20261125T090000Z\r\n');
  expect(text).toContain('UID:term-ends-w1-job-1@gauge-ledger.example\r\n');
});
