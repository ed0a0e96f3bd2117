// Who gets which mail, from when until when; and a clock that was set.

import { expect, test } from '@jest/globals';
import { isDue, isFor, mailText, type Addressed } from './due-mail.js';
import { SteadyClock } from './steady-clock.js';

const quote: Addressed = {
  kind: 'quote-expiring',
  about: 'quote',
  job: 'j1',
  number: '2026-0142',
  name: 'Barn',
  falls_on: '2026-12-10',
  words: 'The quote is good until 2026-12-10',
};
const person = (
  id: string,
  ...roles: ('office' | 'project-manager' | 'crew-lead' | 'engineer')[]
) => ({
  id,
  name: id,
  email: `${id}@office.example`,
  roles,
});

test('from a week before a quote ends until a month after it', () => {
  const days = ['2026-12-02', '2026-12-03', '2026-12-10', '2027-01-09', '2027-01-10'];
  expect(days.map((day) => isDue(quote, day))).toEqual([false, true, true, true, false]);
});

test('whoever has the job; where nobody has it, the project managers', () => {
  const manager = person('m', 'project-manager');
  const office = person('o', 'office');
  expect([manager, office].map((each) => isFor(quote, each))).toEqual([true, false]);
  const had = { ...quote, assigned: 'o' };
  expect([manager, office].map((each) => isFor(had, each))).toEqual([false, true]);
});

test('a request goes to its engineer alone; a tear-off to the crew besides; a license to its holder', () => {
  const engineer = person('e', 'engineer');
  const manager = person('m', 'project-manager');
  const crew = person('c', 'crew-lead');
  const all = [engineer, manager, crew];
  const to = (due: Addressed) => all.filter((each) => isFor(due, each)).map(({ id }) => id);
  expect(to({ ...quote, kind: 'sign-off-asked', asked: 'e' })).toEqual(['e']);
  expect(to({ ...quote, kind: 'tear-off-due' })).toEqual(['m', 'c']);
  expect(to({ ...quote, kind: 'license-expiring', job: null, asked: 'e' })).toEqual(['e', 'm']);
});

test('one mail holds a hundred lines at most, soonest first, and says how to stop it', () => {
  const many = Array.from({ length: 130 }, (_, i) => ({ ...quote, about: `q${i}` }));
  const { subject, text } = mailText('Ridge', [...many, { ...quote, falls_on: '2026-12-01' }]);
  expect(subject).toBe('Ridge: 131 things fall due');
  expect(text.split('\n')[0]).toMatch(/^2026-12-01 {2}2026-0142 Barn/);
  expect(text).toContain('and 31 more');
  expect(text).toContain('To stop these mails');
});

test('a clock that was set is noticed, forward and back, and forgotten once it runs evenly', () => {
  const clock = new SteadyClock();
  const minute = 60_000;
  const looks = [
    [0, 0],
    [10 * minute, 10 * minute],
    [400 * 24 * 60 * minute, 20 * minute],
    [400 * 24 * 60 * minute + 10 * minute, 30 * minute],
    [50 * minute, 40 * minute],
    [60 * minute, 50 * minute],
  ] as const;
  expect(looks.map(([at, counter]) => clock.look(at, counter))).toEqual([
    true,
    true,
    false,
    true,
    false,
    true,
  ]);
});
