// The crash drill through the service's routes: 32 people write over HTTP while service and database are
// killed at random moments. What was acknowledged is recorded, what was not can be sent again under its
// key and is recorded once; no gap, no fork, and the lists equal a rebuild (requirements 1 and 3).
// FAULTS=long kills 200 times instead of 2; CRASH_KILLS=N kills N times.

import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from '@jest/globals';
import { v7 as uuid } from 'uuid';
import { Ledgers } from '../../apps/api/data/ledgers.js';
import { startService } from '../../apps/api/service.js';
import { DEMONSTRATION } from '../../apps/cli/demonstration/people.js';
import { findPlace } from '../../apps/cli/data-folder.js';
import { serviceUrl } from '../../apps/cli/roles.js';
import { stopServer } from '../../apps/cli/server.js';
import { build, startProduct, type Product } from '../built.js';
import { openOne } from '../fuzz/open-one.js';
import { settingsFor, signInByLink, type Client } from '../service.js';

const KILLS = Number(process.env['CRASH_KILLS'] ?? (process.env['FAULTS'] === 'long' ? 200 : 2));
const WRITERS = 32;
const JOBS = 8;
/** A request that a kill left without an answer is sent again under its key. */
const AGAIN_MS = 100;

const folder = mkdtempSync(path.join(tmpdir(), 'gauge-service-crash-'));
let product: Product | undefined;
let port: number;

beforeAll(async () => {
  chmodSync(folder, 0o755);
  await build();
  port = await freePort();
}, 180_000);
afterAll(async () => {
  await product?.kill('SIGKILL');
  await stopServer(findPlace(folder)).catch(() => undefined);
  rmSync(folder, { recursive: true, force: true });
});

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });

/** On a busy machine a start may give up waiting for a database that is still recovering: once more then. */
async function start(): Promise<Product> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await startProduct(['--data', folder, '--port', String(port)], {
        VERIFY_AT: 'never',
      });
    } catch (error) {
      if (attempt === 3 || !String(error).includes('timed out')) throw error;
    }
  }
}

/** What the drill asked for, by its words, and what the service said to it. */
interface Asked {
  readonly words: string;
  readonly key: string;
  acknowledged: boolean;
  tries: number;
}

/** False where no answer came or the service was going down. */
async function once(
  client: Client,
  asked: Asked,
  send: () => Promise<{ status: number; body: unknown }>,
) {
  asked.tries++;
  try {
    const { status, body } = await send();
    if (status === 200 || status === 201) return (asked.acknowledged = true);
    if (status >= 500 || status === 429) return false;
    throw new RangeError(`${asked.words} was answered ${status}: ${JSON.stringify(body)}`);
  } catch (error) {
    if (error instanceof RangeError) throw error;
    return false;
  }
}

interface Places {
  readonly jobs: readonly string[];
  readonly site: string;
  readonly customer: string;
}

/** One person: notes, and now and then a new job. Nothing new once the drill is over. */
async function write(
  client: Client,
  writer: number,
  at: Places,
  all: Asked[],
  over: () => boolean,
) {
  for (let n = 0; !over(); n++) {
    const asked: Asked = {
      words: `${writer}-${n}`,
      key: uuid(),
      acknowledged: false,
      tries: 0,
    };
    all.push(asked);
    const job = at.jobs[(writer + n) % JOBS] ?? '';
    const send = () =>
      n % 10 === 9
        ? client.send(
            'POST',
            '/jobs',
            {
              name: asked.words,
              site: { id: at.site },
              parties: { customer: { id: at.customer } },
            },
            { 'idempotency-key': asked.key },
          )
        : client.send(
            'POST',
            `/jobs/${job}/commands`,
            { type: 'add-note', about: null, words: asked.words },
            { 'if-match': '"3"', 'idempotency-key': asked.key },
          );
    while (!(await once(client, asked, send))) await sleep(AGAIN_MS);
  }
}

async function kill(product: Product, round: number): Promise<void> {
  if (round % 2 === 1) {
    await product.kill('SIGKILL');
    return;
  }
  const ended = new Promise((resolve) => product.process.once('exit', resolve));
  const file = path.join(findPlace(folder).data, 'postmaster.pid');
  process.kill(Number(readFileSync(file, 'utf8').split('\n')[0]), 'SIGKILL');
  await ended;
}

test('requirement 1: killed at random moments under 32 people, nothing acknowledged is lost or doubled', async () => {
  let alive = (product = await start());
  const olive = await signInByLink(alive.address, alive.links['Olive'] ?? '');
  const party = async (kind: string) =>
    (await olive.send<{ id: string }>('POST', '/parties', { kind, details: { name: 'N' } })).body
      .id;
  const at: Places = {
    jobs: await Promise.all(Array.from({ length: JOBS }, (_, i) => openOne(olive, `CRASH-${i}`))),
    site: await party('site'),
    customer: await party('person'),
  };
  const asked: Asked[] = [];
  let over = false;
  const people = Promise.all(
    Array.from({ length: WRITERS }, (_, w) => write(olive, w, at, asked, () => over)),
  );
  // A refusal ends the drill at once, not at its end.
  people.catch(() => (over = true));
  const refused = people.then(() => new Promise<never>(() => undefined));
  const drill = async () => {
    for (let round = 1; round <= KILLS && !over; round++) {
      await sleep(200 + Math.random() * 1300);
      await kill(alive, round);
      alive = product = await start();
    }
    await sleep(1000);
  };
  await Promise.race([drill(), refused]);
  over = true;
  await people;
  expect(asked.every(({ acknowledged }) => acknowledged)).toBe(true);
  expect(asked.filter(({ tries }) => tries > 1).length).toBeGreaterThan(0);
  await expectOnce(asked, at);
}, 7_200_000);

async function expectOnce(asked: readonly Asked[], at: Places): Promise<void> {
  const { service: password } = JSON.parse(
    readFileSync(path.join(folder, 'database.json'), 'utf8'),
  ) as { service: string };
  const pid = path.join(findPlace(folder).data, 'postmaster.pid');
  const database = readFileSync(pid, 'utf8').split('\n')[3]?.trim() ?? '';
  const url = serviceUrl(`postgresql://nobody@127.0.0.1:${database}/gauge`, password);
  const beside = await startService(settingsFor(url));
  try {
    const { ledger, lists } = beside.get(Ledgers);
    const company = DEMONSTRATION.company;
    const report = await ledger.verify(company, []);
    expect(report.fault).toBeUndefined();
    const { pos } = await ledger.head(company);
    expect(report.events).toBe(pos);
    const found: string[] = [];
    for (let after = 0; after < pos; after += 1000) {
      for (const { type, data } of await ledger.readAll(company, { after, limit: 1000 })) {
        const { words, name } = data as { words?: string; name?: string };
        const said = type === 'note-added/1' ? words : type === 'job-opened/1' ? name : undefined;
        if (said !== undefined && /^\d+-\d+$/.test(said)) found.push(said);
      }
    }
    expect(found.sort()).toEqual(asked.map(({ words }) => words).sort());
    expect(at.jobs).toHaveLength(JOBS);
    await lists.catchUp(company);
    for (const list of ['jobs', 'office'])
      expect(await lists.rebuild(company, list)).toMatchObject({ equal: true, swapped: true, pos });
  } finally {
    await beside.stop();
  }
  console.log(`${KILLS} kills, ${asked.length} requests, all acknowledged and recorded once`);
}
