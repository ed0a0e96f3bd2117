// What stands at a path of a job: a fact's value, how it is known ("path#how"), a field of a stage's
// content, or a field of the job. A lookup may lay a proposed content over the record.

import type { ConfirmedStage } from './contract/events.js';
import { contentPath, type Path } from './contract/fact-dictionary.js';
import { kindPath } from './fact-paths.js';
import type { Job } from './job.js';

export type Lookup = (path: Path) => unknown;

export function lookupIn(job: Job, proposed: Readonly<Record<Path, unknown>> = {}): Lookup {
  return (path) => {
    if (Object.hasOwn(proposed, path)) return proposed[path];
    if (path === 'job/priorities') return job.priorities;
    const how = path.endsWith('#how');
    const fact = job.facts[how ? path.slice(0, -4) : path];
    if (fact) return how ? fact.how : fact.value;
    const [kind, surface, stage, field] = path.split('/');
    if (kind === 'surface' && surface !== undefined && path === kindPath(surface))
      return job.surfaces[surface]?.kind ?? null;
    if (kind !== 'surface' || surface === undefined || stage === undefined || field === undefined)
      return null;
    const content = job.surfaces[surface]?.stages[stage as ConfirmedStage]?.record?.content;
    return (content as Readonly<Record<string, unknown>> | undefined)?.[field] ?? null;
  };
}

/** A stage's content as paths, to lay over the record or to compare with what stood before. */
export function contentPaths(
  surface: string,
  stage: ConfirmedStage,
  content: object,
): Record<Path, unknown> {
  return Object.fromEntries(
    Object.entries(content).map(([field, value]) => [contentPath(surface, stage, field), value]),
  );
}

/** Equal as JSON, whatever the order of keys. */
export function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const left = Object.entries(a).filter(([, v]) => v !== undefined);
  const right = b as Record<string, unknown>;
  return (
    left.length === Object.values(right).filter((v) => v !== undefined).length &&
    left.every(([key, value]) => Object.hasOwn(right, key) && same(value, right[key]))
  );
}

export interface PathChange {
  readonly path: Path;
  readonly from: unknown;
  readonly to: unknown;
}
