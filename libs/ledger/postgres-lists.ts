// Keeps the lists of a log: follows commits, takes each page in one transaction with its checkpoint,
// and goes on after a fault of one list without the others noticing.

import { createCheckpoints } from './postgres-checkpoints.js';
import type { Checkpoints } from './postgres-checkpoints.js';
import type { CompanyPool } from './postgres-pool.js';
import type { Ledger, Recorded } from './ledger.js';
import type { List, Lists, ListState } from './postgres-list.js';
import { pages, rebuildList } from './postgres-rebuild.js';
import type { Signals } from './signals.js';

export interface ListsOptions {
  readonly ledger: Ledger;
  readonly pool: CompanyPool;
  readonly lists: readonly List[];
  /** The ledger's own, so that waiting callers hear of an advance at once. */
  readonly signals: Signals;
  readonly onFault: (log: string, list: string, fault: unknown) => void;
  /** Events taken at once. */
  readonly pageSize?: number;
  /** How often a log is looked at when nothing wakes it. */
  readonly pollMs?: number;
}

export function createLists(options: ListsOptions): Lists {
  const { ledger, pool, lists, pageSize = 5000, pollMs = 1000 } = options;
  const checkpoints = createCheckpoints(pool);
  const keeper = createKeeper(options, checkpoints, pageSize);
  const followers = new Map<string, Follower[]>();
  const wake = (log?: string) => {
    const woken = log === undefined ? [...followers.values()].flat() : followers.get(log);
    for (const follower of woken ?? []) follower.wake();
  };
  const stopListening = ledger.onAppended(wake);
  return {
    wake,
    follow: (log) => {
      if (followers.has(log)) return;
      const made = lists.map((list) =>
        startFollower({
          pollMs,
          work: () => keeper.keepUp(log, list),
          onFault: (fault) => options.onFault(log, list.name, fault),
        }),
      );
      followers.set(log, made);
    },
    catchUp: async (log) => {
      for (const list of lists) await keeper.keepUp(log, list);
    },
    generation: async (log, list) => (await checkpoints.open(log, list)).generation,
    states: checkpoints.states,
    rebuild: async (log, name, rebuildOptions = {}) => {
      const list = lists.find((each) => each.name === name);
      if (list === undefined) throw new RangeError(`there is no list ${name}`);
      const tools = { ledger, pool, checkpoints, pageSize };
      const rebuilt = await rebuildList(tools, log, list, rebuildOptions);
      keeper.forget(log, list);
      wake(log);
      return rebuilt;
    },
    stop: async () => {
      stopListening();
      const all = [...followers.values()].flat();
      followers.clear();
      await Promise.all(all.map((follower) => follower.stop()));
    },
  };
}

interface Keeper {
  /** Takes page after page until the list has seen the whole log. */
  keepUp(log: string, list: List): Promise<void>;
  /** The list's state has changed otherwise. */
  forget(log: string, list: List): void;
}

function createKeeper(
  { ledger, signals }: ListsOptions,
  checkpoints: Checkpoints,
  pageSize: number,
): Keeper {
  const known = new Map<string, ListState>();
  const keyOf = (log: string, list: List) => `${log}\0${list.name}`;
  const openState = (log: string, list: List) => checkpoints.open(log, list.name);
  return {
    keepUp: async (log, list) => {
      const note = (state: ListState) => {
        known.set(keyOf(log, list), state);
        signals.advanced(log, list.name, state.pos);
      };
      for (let first = true; ; first = false) {
        const kept = first ? known.get(keyOf(log, list)) : undefined;
        let state = kept ?? (await openState(log, list));
        note(state);
        let alone = true;
        for await (const page of pages({ ledger, pageSize }, log, state.pos, Infinity)) {
          alone = await take(checkpoints, log, list, state, page);
          if (!alone) break;
          state = { ...state, pos: (page.at(-1) as Recorded).pos };
          note(state);
        }
        if (alone) return;
      }
    },
    forget: (log, list) => {
      known.delete(keyOf(log, list));
    },
  };
}

/** False when another worker moved the list; what it made of it must then be asked. */
function take(
  checkpoints: Checkpoints,
  log: string,
  list: List,
  state: ListState,
  page: Recorded[],
): Promise<boolean> {
  const step = { from: state.pos, to: (page.at(-1) as Recorded).pos };
  const scope = { log, generation: state.generation };
  return checkpoints.advance(log, state, step, (client) => list.apply(page, scope, client));
}

interface Follower {
  wake(): void;
  stop(): Promise<void>;
}

interface FollowerOptions {
  readonly work: () => Promise<void>;
  readonly onFault: (fault: unknown) => void;
  readonly pollMs: number;
}

const LONGEST_PAUSE = 30_000;

/** Works when woken and at every poll; after a fault it pauses, twice as long each time. */
function startFollower({ work, onFault, pollMs }: FollowerOptions): Follower {
  let stopped = false;
  let awake = true;
  let rouse: () => void = () => undefined;
  const rest = (ms: number, wakeable: boolean): Promise<void> =>
    new Promise((resolve) => {
      const timer = setTimeout(resolve, ms);
      rouse = () => {
        if (!wakeable && !stopped) return;
        clearTimeout(timer);
        resolve();
      };
    });
  const run = async () => {
    let pause = pollMs;
    while (!stopped) {
      awake = false;
      try {
        await work();
        pause = pollMs;
        if (!awake && !stopped) await rest(pollMs, true);
      } catch (fault) {
        onFault(fault);
        if (!stopped) await rest(pause, false);
        pause = Math.min(pause * 2, LONGEST_PAUSE);
      }
    }
  };
  const running = run();
  return {
    wake: () => {
      awake = true;
      rouse();
    },
    stop: async () => {
      stopped = true;
      rouse();
      await running;
    },
  };
}
