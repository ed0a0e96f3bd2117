// kill -9 of the service amid commands: every acknowledged one is recorded, none twice, what was
// not acknowledged can be sent again under its key, and the lists equal a rebuild.

import { afterAll, beforeAll, expect, test } from '@jest/globals';
import { v7 as uuid } from 'uuid';
import { Ledgers } from '../../apps/api/data/ledgers.js';
import { startService } from '../../apps/api/service.js';
import { DEMONSTRATION } from '../../apps/cli/demonstration/people.js';
import { build, startProduct } from '../built.js';
import { freshDatabase, type TestDatabase } from '../database.js';
import { openOne } from '../fuzz/open-one.js';
import { settingsFor, signInByLink, type Client } from '../service.js';

const COMMANDS = Number(process.env['KILL_COMMANDS'] ?? 200);
const JOBS = 4;
let database: TestDatabase;
const product = () =>
  startProduct(['--port', '0'], {
    DATABASE_URL: database.ownerUrl,
    DATABASE_SERVICE_URL: database.serviceUrl,
  });

beforeAll(async () => {
  await build();
  database = await freshDatabase();
}, 120_000);
afterAll(() => database.drop());

interface Note {
  readonly key: string;
  readonly job: string;
  readonly words: string;
  acknowledged: boolean;
}

/** False where no answer came. */
async function send(client: Client, note: Note): Promise<boolean> {
  const body = { type: 'add-note', about: null, words: note.words };
  try {
    const answer = await client.send('POST', `/jobs/${note.job}/commands`, body, {
      'if-match': '"3"',
      'idempotency-key': note.key,
    });
    if (answer.status !== 200) throw new TypeError(JSON.stringify(answer.body));
    return true;
  } catch (error) {
    if (error instanceof TypeError && error.message.startsWith('{')) throw error;
    return false;
  }
}

async function wordsOf(client: Client, job: string): Promise<readonly string[]> {
  const { body } = await client.get<{ entries: { type: string; data: { words?: string } }[] }>(
    `/jobs/${job}/history`,
  );
  return body.entries
    .filter(({ type }) => type === 'note-added/1')
    .map(({ data }) => data.words ?? '');
}

test('every acknowledged command is there, none twice, and the lists equal a rebuild', async () => {
  const first = await product();
  const olive = await signInByLink(first.address, first.links['Olive'] ?? '');
  const jobs = await Promise.all(
    Array.from({ length: JOBS }, (_, i) => openOne(olive, `KILL-${i}`)),
  );
  const notes: Note[] = Array.from({ length: COMMANDS }, (_, i) => ({
    key: uuid(),
    job: jobs[i % JOBS] ?? '',
    words: `note ${i}`,
    acknowledged: false,
  }));
  let answered = 0;
  const killAt = Math.floor(COMMANDS / 3);
  const workers = Array.from({ length: 8 }, async (_, w) => {
    for (const note of notes.filter((__, i) => i % 8 === w)) {
      note.acknowledged = await send(olive, note);
      if (note.acknowledged && ++answered === killAt) first.process.kill('SIGKILL');
      if (!note.acknowledged) return;
    }
  });
  await Promise.all(workers);
  await first.kill('SIGKILL');
  expect(answered).toBeGreaterThanOrEqual(killAt);
  expect(answered).toBeLessThan(COMMANDS);

  const second = await product();
  const again = await signInByLink(second.address, second.links['Olive'] ?? '');
  const found = (await Promise.all(jobs.map((job) => wordsOf(again, job)))).flat();
  expect(new Set(found).size).toBe(found.length);
  for (const { words } of notes.filter(({ acknowledged }) => acknowledged))
    expect(found).toContain(words);

  for (const note of notes) expect(await send(again, note)).toBe(true);
  const all = (await Promise.all(jobs.map((job) => wordsOf(again, job)))).flat();
  expect([...all].sort()).toEqual(notes.map(({ words }) => words).sort());
  expect(await second.kill('SIGTERM')).toBe(0);

  const inside = await startService(settingsFor(database.serviceUrl));
  const { ledger, lists } = inside.get(Ledgers);
  await lists.catchUp(DEMONSTRATION.company);
  const rebuilt = await lists.rebuild(DEMONSTRATION.company, 'jobs');
  expect(rebuilt).toMatchObject({
    equal: true,
    swapped: true,
    pos: (await ledger.head(DEMONSTRATION.company)).pos,
  });
  await inside.stop();
}, 180_000);
