// One preview from the first decision to the last, wherever it runs: in the service's worker thread
// or on the command line.

import { createPreview, type Shelf } from '#jobs';
import type { Affected, Counts, ImpactScope } from '#jobs/contract';
import type { CompanyPool } from '#ledger';
import type { Edition } from '#rules';
import { openSurfaces, pastDecisions, type JobNames } from './read-decisions.js';
import { readShelf } from './shelf.js';

export interface ImpactRow extends Affected {
  readonly number: string;
  readonly job_name: string;
  readonly surface_name: string;
}
export interface Going {
  readonly done: number;
  readonly counts: Counts;
  readonly read: number;
  readonly of: number;
}
export interface Outcome extends Going {
  readonly position: number;
  readonly rows: readonly ImpactRow[];
  readonly unlisted: number;
}
export interface PreviewOptions {
  readonly pool: CompanyPool;
  readonly company: string;
  readonly scope: ImpactScope;
  readonly edition: Edition;
  readonly say: (going: Going) => void;
}

const SAID_EVERY_MS = 200;

export async function runPreview(options: PreviewOptions): Promise<Outcome> {
  const { pool, company, scope, edition, say } = options;
  const shelf: Shelf = await readShelf(pool, company);
  const decisions = await (scope === 'open' ? openSurfaces : pastDecisions)(pool, company);
  const preview = createPreview(edition, shelf);
  let [read, of, saidAt] = [0, 0, 0];
  for await (const page of decisions.pages) {
    for (const each of page.previewed) preview.add(each);
    ({ read, of } = page);
    if (Date.now() - saidAt < SAID_EVERY_MS) continue;
    saidAt = Date.now();
    say({ ...preview.progress(), read, of });
  }
  const { done, counts, affected, unlisted } = preview.impact();
  const { position, names } = decisions;
  return {
    done,
    counts,
    read,
    of,
    position,
    unlisted,
    rows: affected.map((row) => named(row, names)),
  };
}

const named = (row: Affected, names: ReadonlyMap<string, JobNames>): ImpactRow => {
  const job = names.get(row.job);
  return {
    ...row,
    number: job?.number ?? '',
    job_name: job?.name ?? '',
    surface_name: job?.surfaces[row.surface] ?? row.surface,
  };
};
