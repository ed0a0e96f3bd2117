// Tells other processes of a commit, by NOTIFY on a connection of its own: at most once in 20 ms,
// and only while another process listens. A lost message costs waiting until the next poll.

import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import type pg from 'pg';

export interface WakeUp {
  /** This process committed to the log. */
  announce(log: string): void;
  stop(): Promise<void>;
}

export interface WakeUpOptions {
  /** A new, unconnected client of the service role; not through a transaction-pooling proxy. */
  readonly newClient: () => pg.Client;
  /** Another process committed to the log; undefined: to some log. */
  readonly onWake: (log: string | undefined) => void;
  readonly onFault: (fault: unknown) => void;
}

const CHANNEL = 'ledger_wake_up';
const LISTENER = 'ledger listener';
const NOT_MORE_OFTEN_MS = 20;
const ASK_WHO_LISTENS_MS = 2000;
const RECONNECT_MS = 1000;
/** A payload has less than 8000 bytes. */
const MOST_LOGS = 20;

export function startWakeUp(options: WakeUpOptions): WakeUp {
  const line = openLine(options);
  const pending = new Set<string>();
  let timer: NodeJS.Timeout | undefined;
  let flushed = 0;
  const flush = () => {
    timer = undefined;
    flushed = Date.now();
    const logs = [...pending];
    pending.clear();
    line.tell(logs.length > MOST_LOGS ? [] : logs).catch(options.onFault);
  };
  return {
    announce: (log) => {
      pending.add(log);
      timer ??= setTimeout(flush, Math.max(0, flushed + NOT_MORE_OFTEN_MS - Date.now()));
    },
    stop: async () => {
      clearTimeout(timer);
      await line.close();
    },
  };
}

interface Line {
  /** Of these logs, or with none named of some log; says nothing while nobody else listens. */
  tell(logs: readonly string[]): Promise<void>;
  close(): Promise<void>;
}

/** The connection, opened again whenever it ends. */
function openLine({ newClient, onWake, onFault }: WakeUpOptions): Line {
  const me = randomUUID();
  let client: pg.Client | undefined;
  let closed = false;
  let others = true;
  let asked = 0;
  const send = (logs: readonly string[]) =>
    client?.query('SELECT pg_notify($1, $2)', [CHANNEL, [me, ...logs].join('\n')]);
  const ask = async () => {
    asked = Date.now();
    const found = await client?.query(OTHERS, [LISTENER]);
    others = (found?.rowCount ?? 0) > 0;
  };
  const hear = (text: string) => {
    const [sender, ...logs] = text.split('\n');
    if (sender === me) return;
    others = true;
    if (logs.length === 0) onWake(undefined);
    for (const log of logs) onWake(log);
  };
  const listen = async () => {
    while (!closed) {
      const next = newClient();
      try {
        const ended = new Promise((resolve) => next.once('end', resolve));
        next.on('error', onFault);
        next.on('notification', (message) => hear(message.payload ?? ''));
        await next.connect();
        await next.query(`SET application_name = '${LISTENER}'`);
        await next.query(`LISTEN ${CHANNEL}`);
        client = next;
        if (closed) await next.end();
        await send([]);
        await ask();
        await ended;
      } catch (fault) {
        onFault(fault);
        await next.end().catch(() => undefined);
      }
      client = undefined;
      if (!closed) await sleep(RECONNECT_MS, undefined, { ref: false });
    }
  };
  const listening = listen();
  return {
    tell: async (logs) => {
      if (Date.now() - asked > ASK_WHO_LISTENS_MS) await ask();
      if (others) await send(logs);
    },
    close: async () => {
      closed = true;
      await client?.end();
      await listening;
    },
  };
}

const OTHERS = `SELECT FROM pg_stat_activity
  WHERE application_name = $1 AND datname = current_database() AND pid <> pg_backend_pid()`;
