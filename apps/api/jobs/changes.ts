// What happened to a job since the version that a person saw: harmless where it touched other
// surfaces only, otherwise said with who and what.

import { Injectable } from '@nestjs/common';
import { surfacesOf, wordsFor, type Command, type Job, type RefusalView } from '#jobs';
import type { Recorded } from '#ledger';
import type { Since } from '../problems.js';
import { Jobs } from './fold.js';
import { pastEvent } from './job-stream.js';

export interface Stale {
  readonly since: readonly Since[];
  readonly refusals: readonly RefusalView[];
}

const NOTHING: Stale = { since: [], refusals: [] };

@Injectable()
export class Changes {
  constructor(private readonly jobs: Jobs) {}

  async since(
    company: string,
    job: Job,
    seen: number | undefined,
    command: Command,
  ): Promise<Stale> {
    if (seen === undefined || seen === job.version) return NOTHING;
    if (seen > job.version)
      return stale([], `Version ${seen} does not exist; the job is at ${job.version}.`);
    const events = await this.jobs.since(company, job.id, seen);
    const since = clashing(events, surfacesIn(command, job));
    if (since.length === 0) return NOTHING;
    const words = since.map((each) => each.words).join('; ');
    return stale(since, `Changed since version ${seen}: ${words}. Look at it and decide again.`);
  }
}

/** Surfaces that a command works on; "all" where it is about the job. */
export function surfacesIn(command: Command, job: Job): readonly string[] | 'all' {
  if ('surface' in command) return [command.surface];
  if ('surfaces' in command && command.type !== 'open-job') return command.surfaces;
  if (
    command.type === 'add-note' ||
    command.type === 'add-building' ||
    command.type === 'add-surface'
  )
    return [];
  if (command.type !== 'record-facts') return 'all';
  const on = command.facts.flatMap((fact) =>
    fact.on !== null && job.surfaces[fact.on] ? [fact.on] : [],
  );
  return on.length === command.facts.length ? on : 'all';
}

/** The events that touch one of the surfaces. */
export function clashing(
  events: readonly Recorded[],
  mine: readonly string[] | 'all',
): readonly Since[] {
  return events.flatMap((event) => {
    const theirs = surfacesOf(pastEvent(event));
    const touched =
      mine === 'all'
        ? theirs
        : theirs === 'all'
          ? mine
          : theirs.filter((each) => mine.includes(each));
    const clashes =
      touched === 'all' ||
      touched.length > 0 ||
      (mine === 'all' && theirs !== 'all' && theirs.length > 0);
    if (!clashes) return [];
    return [
      {
        by: event.by.person,
        at: event.recordedAt,
        words: wordsFor(pastEvent(event)),
        surfaces: theirs === 'all' ? [] : theirs,
      },
    ];
  });
}

const stale = (since: readonly Since[], words: string): Stale => ({
  since,
  refusals: [{ kind: 'stale', code: 'VERSION', words, cites: [], figures: [] }],
});
