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

const CHANNEL = 'gauge_ledger';
const LISTENER = 'gauge ledger listener';
const NOT_MORE_OFTEN_MS = 20;
const ASK_WHO_LISTENS_MS = 2000;
const RECONNECT_MS = 1000;
/** A payload has less than 8000 bytes. */
const MOST_LOGS = 20;

export function startWakeUp({ newClient, onWake, onFault }: WakeUpOptions): WakeUp {
  const me = randomUUID();
  const pending = new Set<string>();
  let client: pg.Client | undefined;
  let timer: NodeJS.Timeout | undefined;
  let stopped = false;
  let others = true;
  let asked = 0;
  let flushed = 0;

  const send = async (text: string) => client?.query('SELECT pg_notify($1, $2)', [CHANNEL, text]);
  const ask = async () => {
    asked = Date.now();
    const found = await client?.query(OTHERS, [LISTENER]);
    others = (found?.rowCount ?? 0) > 0;
  };
  const flush = async () => {
    if (Date.now() - asked > ASK_WHO_LISTENS_MS) await ask();
    const logs = [...pending];
    pending.clear();
    if (others) await send([me, ...(logs.length > MOST_LOGS ? [] : logs)].join('\n'));
  };
  const hear = (text: string) => {
    const [sender, ...logs] = text.split('\n');
    if (sender === me) return;
    others = true;
    if (logs.length === 0) onWake(undefined);
    for (const log of logs) onWake(log);
  };
  const listen = async () => {
    while (!stopped) {
      const next = newClient();
      try {
        const ended = new Promise((resolve) => next.once('end', resolve));
        next.on('error', onFault);
        next.on('notification', (message) => hear(message.payload ?? ''));
        await next.connect();
        await next.query(`SET application_name = '${LISTENER}'`);
        await next.query(`LISTEN ${CHANNEL}`);
        client = next;
        await send(me);
        await ask();
        await ended;
      } catch (fault) {
        onFault(fault);
        await next.end().catch(() => undefined);
      }
      client = undefined;
      if (!stopped) await sleep(RECONNECT_MS, undefined, { ref: false });
    }
  };
  const listening = listen();
  return {
    announce: (log) => {
      pending.add(log);
      timer ??= setTimeout(
        () => {
          timer = undefined;
          flushed = Date.now();
          flush().catch(onFault);
        },
        Math.max(0, flushed + NOT_MORE_OFTEN_MS - Date.now()),
      );
    },
    stop: async () => {
      stopped = true;
      clearTimeout(timer);
      await client?.end();
      await listening;
    },
  };
}

const OTHERS = `SELECT FROM pg_stat_activity
  WHERE application_name = $1 AND datname = current_database() AND pid <> pg_backend_pid()`;
