// What canonical form, hash and root cost of an append: the same append timed in this process, part
// by part, against the whole append at 32 clients.

import { canonical, Frontier, leafHash } from '#ledger';
import { loadEvents } from './events.js';
import { median } from './measure.js';

const EVENTS = 4000;
const BATCH = 32;

/** Microseconds for each event: the JSON that any store needs, and what the tree adds. */
export function hashingCost(): { readonly json: number; readonly added: number } {
  const events = loadEvents(EVENTS).map((event) => event.data);
  const bodies = events.map((data) => canonical(data));
  const runs = Array.from({ length: 5 }, () => ({
    json: timed(() => events.forEach((data) => JSON.stringify(data))),
    canonical: timed(() => events.forEach((data) => canonical(data))),
    tree: timed(() => growTree(bodies)),
  }));
  const middle = (name: 'json' | 'canonical' | 'tree') => median(runs.map((run) => run[name]));
  return { json: middle('json'), added: middle('canonical') - middle('json') + middle('tree') };
}

function growTree(bodies: readonly string[]): void {
  const frontier = new Frontier();
  bodies.forEach((body, i) => {
    frontier.append(leafHash(body));
    if (i % BATCH === 0) frontier.root();
  });
}

function timed(work: () => void): number {
  const start = performance.now();
  work();
  return ((performance.now() - start) * 1000) / EVENTS;
}
