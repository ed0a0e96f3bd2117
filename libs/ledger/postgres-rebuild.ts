// Rebuilds a list beside the one in use, compares the two, and swaps them in one step that readers
// never see half done.

import type { Checkpoints } from './postgres-checkpoints.js';
import type { CompanyPool } from './postgres-pool.js';
import type { Ledger, Recorded } from './ledger.js';
import type { List, ListState, RebuildOptions, Rebuilt } from './postgres-list.js';

export interface RebuildTools {
  readonly ledger: Pick<Ledger, 'readAll' | 'head'>;
  readonly pool: CompanyPool;
  readonly checkpoints: Checkpoints;
  readonly pageSize: number;
}

export async function rebuildList(
  tools: RebuildTools,
  log: string,
  list: List,
  { acceptDifference = false, onProgress }: RebuildOptions,
): Promise<Rebuilt> {
  const { pool, checkpoints, ledger } = tools;
  const live = await checkpoints.open(log, list.name);
  const fresh = await checkpoints.begin(log, list);
  const head = (await ledger.head(log)).pos;
  const reached = await fill(tools, log, list, fresh, (pos) => onProgress?.(pos, head));
  return pool.transaction(log, async (client) => {
    const pos = await checkpoints.holdLive(client, log, live);
    const scope = { log, generation: fresh.generation };
    for await (const page of pages(tools, log, reached, pos)) {
      await list.apply(page, scope, client);
    }
    await client.query(
      'UPDATE ledger.projection SET pos = $4 WHERE log_id = $1 AND name = $2 AND generation = $3',
      [log, list.name, fresh.generation, pos],
    );
    const before = await list.digest({ log, generation: live.generation }, client);
    const equal = before === (await list.digest(scope, client));
    const swapped = equal || acceptDifference;
    if (swapped) await checkpoints.swap(client, log, fresh);
    if (equal) await checkpoints.remove(client, log, list, live.generation);
    return { generation: fresh.generation, pos, equal, swapped };
  });
}

/** Fills the new generation up to where the live one stands; gives where that was. */
async function fill(
  tools: RebuildTools,
  log: string,
  list: List,
  fresh: ListState,
  onProgress: (pos: number) => void,
): Promise<number> {
  let reached = 0;
  const target = (await tools.checkpoints.open(log, list.name)).pos;
  for await (const page of pages(tools, log, 0, target)) {
    const to = (page.at(-1) as Recorded).pos;
    const scope = { log, generation: fresh.generation };
    const step = { from: reached, to };
    const moved = await tools.checkpoints.advance(log, fresh, step, (client) =>
      list.apply(page, scope, client),
    );
    if (!moved) throw new Error(`Another rebuild of the list ${list.name} took over.`);
    reached = to;
    onProgress(reached);
  }
  return reached;
}

/** Pages of events after < pos ≤ upTo; while a full one is in use the next one is read. */
export async function* pages(
  { ledger, pageSize }: Pick<RebuildTools, 'ledger' | 'pageSize'>,
  log: string,
  after: number,
  upTo: number,
): AsyncGenerator<Recorded[]> {
  const limitAt = (from: number) => Math.min(pageSize, upTo - from);
  const read = (from: number) => ledger.readAll(log, { after: from, limit: limitAt(from) });
  let from = after;
  let next = from < upTo ? read(from) : undefined;
  while (next !== undefined) {
    const page = await next;
    const full = page.length === limitAt(from);
    from += page.length;
    next = full && from < upTo ? read(from) : undefined;
    next?.catch(() => undefined);
    if (page.length > 0) yield page;
  }
}
