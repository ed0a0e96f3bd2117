// The checkpoints of lists: how far each generation has come, moved only together with the effect.

import type pg from 'pg';
import type { CompanyPool } from './postgres-pool.js';
import type { List, ListState } from './postgres-list.js';

export interface Step {
  readonly from: number;
  readonly to: number;
}

export interface Checkpoints {
  states(log: string): Promise<ListState[]>;
  /** The live generation, made when there is none. */
  open(log: string, list: string): Promise<ListState>;
  /** False, and no effect, when another worker moved this checkpoint first. */
  advance(
    log: string,
    state: ListState,
    step: Step,
    effect: (client: pg.ClientBase) => Promise<void>,
  ): Promise<boolean>;
  /** A new generation at position 0; unfinished ones go, and so does their worker's checkpoint. */
  begin(log: string, list: List): Promise<ListState>;
  /** Holds the live generation still meanwhile; gives its position now. */
  holdLive(client: pg.ClientBase, log: string, live: ListState): Promise<number>;
  /** One update makes the new generation live and the old one not. */
  swap(client: pg.ClientBase, log: string, to: ListState): Promise<void>;
  remove(client: pg.ClientBase, log: string, list: List, generation: number): Promise<void>;
}

export function createCheckpoints(pool: CompanyPool): Checkpoints {
  const states = async (log: string): Promise<ListState[]> => {
    const { rows } = await pool.use(log, (client) =>
      client.query<Row>({ ...STATES, values: [log] }),
    );
    return rows.map((row) => ({ ...row, pos: Number(row.pos) }));
  };
  const remove: Checkpoints['remove'] = async (client, log, list, generation) => {
    await list.clear({ log, generation }, client);
    await client.query({ ...REMOVE, values: [log, list.name, generation] });
  };
  return {
    states,
    open: async (log, name) => {
      await pool.use(log, (client) => client.query({ ...OPEN, values: [log, name] }));
      const live = (await states(log)).find((state) => state.name === name && state.live);
      if (live === undefined) throw new Error(`The list ${name} of ${log} has no live generation.`);
      return live;
    },
    advance: async (log, { name, generation, live }, { from, to }, effect) => {
      const moved = await pool.transaction(log, async (client) => {
        const values = [log, name, generation, live, from, to];
        const { rowCount } = await client.query({ ...ADVANCE, values });
        if (rowCount !== 1) return false;
        await effect(client);
        return true;
      });
      return moved;
    },
    begin: async (log, list) => {
      const own = (await states(log)).filter((state) => state.name === list.name);
      const generation = Math.max(0, ...own.map((state) => state.generation)) + 1;
      await pool.transaction(log, async (client) => {
        for (const state of own) if (!state.live) await remove(client, log, list, state.generation);
        await client.query({ ...BEGIN, values: [log, list.name, generation] });
      });
      return { name: list.name, generation, pos: 0, live: false };
    },
    holdLive: async (client, log, live) => {
      const values = [log, live.name, live.generation];
      const { rows } = await client.query<{ pos: string }>({ ...HOLD, values });
      if (rows[0] === undefined) throw new Error(`The list ${live.name} was swapped meanwhile.`);
      return Number(rows[0].pos);
    },
    swap: async (client, log, to) => {
      await client.query({ ...SWAP, values: [log, to.name, to.generation] });
    },
    remove,
  };
}

interface Row {
  readonly name: string;
  readonly generation: number;
  readonly pos: string;
  readonly live: boolean;
}

const STATES = {
  name: 'ledger-list-states',
  text: `SELECT name, generation, pos, live FROM ledger.projection WHERE log_id = $1
    ORDER BY name, generation`,
};

const OPEN = {
  name: 'ledger-list-open',
  text: `INSERT INTO ledger.projection (log_id, name, generation, pos, live)
    SELECT $1, $2, 1, 0, true
    WHERE NOT EXISTS (SELECT FROM ledger.projection WHERE log_id = $1 AND name = $2)
    ON CONFLICT DO NOTHING`,
};

const ADVANCE = {
  name: 'ledger-list-advance',
  text: `UPDATE ledger.projection SET pos = $6
    WHERE log_id = $1 AND name = $2 AND generation = $3 AND live = $4 AND pos = $5`,
};

const BEGIN = {
  name: 'ledger-list-begin',
  text: `INSERT INTO ledger.projection (log_id, name, generation, pos, live)
    VALUES ($1, $2, $3, 0, false)`,
};

const HOLD = {
  name: 'ledger-list-hold',
  text: `SELECT pos FROM ledger.projection
    WHERE log_id = $1 AND name = $2 AND generation = $3 AND live FOR UPDATE`,
};

const SWAP = {
  name: 'ledger-list-swap',
  text: 'UPDATE ledger.projection SET live = (generation = $3) WHERE log_id = $1 AND name = $2',
};

const REMOVE = {
  name: 'ledger-list-remove',
  text: 'DELETE FROM ledger.projection WHERE log_id = $1 AND name = $2 AND generation = $3',
};
