// What happened since a person looked matters only where it touched the same surface.

import { describe, expect, test } from '@jest/globals';
import { Command, initial, type Job } from '#jobs';
import type { Recorded } from '#ledger';
import { clashing, surfacesIn } from './changes.js';

const event = (type: string, data: object) =>
  ({
    type,
    data,
    by: { person: 'p', role: 'office' },
    recordedAt: '2026-11-25T08:00:00.000000Z',
  }) as unknown as Recorded;
const note = event('note-added/1', { about: 'a', words: 'x', files: [] });
const tearOff = (surface: string) =>
  event('tear-off-recorded/1', { surface, finding: 'as-assumed', words: 'x', files: [] });
const described = event('job-described/1', { name: 'x' });

const job = { ...initial('j'), surfaces: { a: {}, b: {} } } as unknown as Job;
const command = (value: object) => surfacesIn(Command.parse(value), job);

describe('surfaces of a command', () => {
  test.each([
    [{ type: 'confirm-substrate', surface: 'a' }, ['a']],
    [{ type: 'add-note', about: 'a', words: 'x' }, []],
    [{ type: 'describe-job', name: 'x' }, 'all'],
    [
      {
        type: 'record-facts',
        facts: [{ on: 'a', fact: 'slope', value: { v: '4', u: 'per-12' }, how: 'told' }],
      },
      ['a'],
    ],
    [
      { type: 'record-facts', facts: [{ on: null, fact: 'exposure', value: 'C', how: 'told' }] },
      'all',
    ],
    [
      {
        type: 'record-facts',
        facts: [{ on: 'shed', fact: 'width', value: { v: '40', u: 'ft' }, how: 'told' }],
      },
      'all',
    ],
  ] as const)('%j', (value, expected) => {
    expect(command(value)).toEqual(expected);
  });
});

describe('clashes', () => {
  test('another surface and a note do not matter; the same surface and the whole job do', () => {
    expect(clashing([tearOff('b'), note], ['a'])).toEqual([]);
    expect(clashing([tearOff('a')], ['a'])).toMatchObject([{ by: 'p', surfaces: ['a'] }]);
    expect(clashing([described], ['a'])).toHaveLength(1);
  });

  test('a command about the whole job clashes with every surface, not with notes', () => {
    expect(clashing([tearOff('b')], 'all')).toHaveLength(1);
    expect(clashing([note], 'all')).toEqual([]);
  });

  test('what is about no surface clashes only with nothing', () => {
    expect(clashing([tearOff('a')], [])).toEqual([]);
  });
});
