// What differs between two readings of a job: facts, what each stage settled, sign-offs.

import { chosenField, label } from '#jobs/contract';
import type { Catalogue, JobView } from '#jobs/contract';
import { optionName } from '../gauge/checks.js';
import {
  capital,
  day,
  fastenerName,
  number,
  pathWords,
  prose,
  STATUS_WORDS,
  value,
} from '../parts/words.js';

export interface Difference {
  readonly what: string;
  readonly how: 'added' | 'removed' | 'changed';
  readonly before: string;
  readonly after: string;
}

/** undefined: the job was not opened yet. */
export function differences(
  before: JobView | undefined,
  after: JobView | undefined,
  catalogue?: Catalogue,
): readonly Difference[] {
  const a = before ? entries(before, catalogue) : new Map<string, string>();
  const b = after ? entries(after, catalogue) : new Map<string, string>();
  return [...new Set([...a.keys(), ...b.keys()])].flatMap((what): Difference[] => {
    const was = a.get(what);
    const is = b.get(what);
    if (was === is) return [];
    const how = was === undefined ? 'added' : is === undefined ? 'removed' : 'changed';
    return [{ what, how, before: prose(was ?? ''), after: prose(is ?? '') }];
  });
}

/** Ids of the catalogue: the names beside them are compared. */
const IDS: readonly string[] = ['profile', 'option'];

function entries(job: JobView, catalogue: Catalogue | undefined): Map<string, string> {
  const nameOf = (id: string) =>
    [...job.surfaces, ...job.buildings].find((each) => each.id === id)?.name ?? id;
  const found = new Map<string, string>([
    ['Job: name', job.name],
    ['Job: due', day(job.due) || 'no date'],
    ['Job: what the owner wants', job.priorities.map(label).join(', ')],
  ]);
  for (const fact of job.facts) {
    const [on = '', id = ''] = fact.path.split('/');
    const thing = on === 'site' ? 'Site' : nameOf(id);
    found.set(
      `${thing}: ${pathWords(fact.path)}`,
      `${value(fact.value)} (${fact.how}${fact.source ? `: ${fact.source}` : ''})`,
    );
  }
  for (const surface of job.surfaces) {
    for (const { stage, status, content, evaluation } of Object.values(surface.stages)) {
      const name = `${surface.name}: ${capital(label(stage))}`;
      if (status !== 'not-started') found.set(`${name}, state`, STATUS_WORDS[status]);
      for (const [field, given] of Object.entries(content ?? {})) {
        if (given === null || IDS.includes(field)) continue;
        const taken = evaluation?.options.find(({ id }) => field === 'recommended' && id === given);
        const words = taken ? optionName(taken) : text(given, catalogue);
        const [what, is] = chosenField(field, words);
        found.set(`${name}, ${what}`, is);
      }
    }
    if (surface.sign_off.status !== 'not-started') {
      found.set(`${surface.name}: Engineer sign-off, state`, STATUS_WORDS[surface.sign_off.status]);
    }
    if (surface.sign_off.conditions) {
      found.set(`${surface.name}: Engineer sign-off, conditions`, surface.sign_off.conditions);
    }
  }
  return found;
}

/** Loads and attachments as words; steps of a calculation are not compared line by line. */
function text(given: unknown, catalogue: Catalogue | undefined): string {
  if (typeof given !== 'object' || given === null || Array.isArray(given)) return value(given);
  const { zones, method, basis, source, fastener, roof_psf } = given as {
    zones?: { zone: string; inward_psf?: string; outward_psf?: string; spacing?: { v: string } }[];
    method?: string;
    basis?: string;
    source?: string;
    fastener?: string;
    roof_psf?: string;
  };
  const list = zones?.map((each) =>
    each.spacing
      ? `zone ${each.zone} every ${each.spacing.v} in`
      : `zone ${each.zone} inward ${each.inward_psf}, uplift ${number(each.outward_psf ?? '')} psf`,
  );
  return (
    [
      fastener && fastenerName(fastener, catalogue),
      method,
      basis,
      roof_psf && `${roof_psf} psf`,
      source,
      ...(list ?? []),
    ]
      .filter(Boolean)
      .join(', ') || value(given)
  );
}
