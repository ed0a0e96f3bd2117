// The signing key of an installation is changed beside the running service: two companies, one key.

import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from '@jest/globals';
import { openCheckpoint } from '../../libs/ledger/checkpoint.js';
import { Ledgers } from '../api/data/ledgers.js';
import { Signing } from '../api/data/signing.js';
import { Settings, startService } from '../api/service.js';
import { company, settingsFor, withService } from '../../tests/service.js';
import { changeKey, showKey } from './change-key.js';

const running = withService({ keys: true });

interface Keys {
  readonly keys: readonly { text: string; fingerprint: string; in_use: boolean }[];
  readonly changes: readonly { by: string; from: string; to: string }[];
  readonly checkpoint: { note: string } | null;
}

const said: string[] = [];
const at = () => ({
  serviceUrl: running.database.serviceUrl,
  keysFolder: running.keysFolder ?? '',
  say: (line: string) => void said.push(line),
});

test('it is told in each record, and the running service signs with it at once', async () => {
  const roles = { administrator: ['administrator'] } as const;
  const first = await company(running, 'First Roofing (invented)', roles);
  const second = await company(running, 'Second Roofing (invented)', roles);
  const read = async (of: typeof first) => (await of.administrator.get<Keys>('/keys')).body;
  const signing = running.service.get(Signing);
  await signing.checkpoint(first.id);
  const before = await read(first);
  const old = before.keys[0]!.fingerprint;
  await showKey(at());
  expect(said.join('\n')).toContain(`change --from ${old}`);
  await expect(changeKey(at(), 'f'.repeat(64))).rejects.toThrow(`has fingerprint ${old}, not`);
  expect(await read(first)).toEqual(before);

  const copied = mkdtempSync(path.join(tmpdir(), 'gauge-keys-copy-'));
  cpSync(at().keysFolder, copied, { recursive: true });
  await changeKey(at(), old);
  for (const each of [first, second]) {
    const { keys, changes, checkpoint } = await read(each);
    expect(keys.map(({ in_use }) => in_use)).toEqual([true, false]);
    expect(keys[1]!.fingerprint).toBe(old);
    expect(changes).toEqual([
      expect.objectContaining({ by: 'operator', from: keys[1]!.text, to: keys[0]!.text }),
    ]);
    expect(checkpoint?.note.match(/^— /gm)).toHaveLength(2);
  }
  const { keys } = await read(first);
  expect(said.join('\n')).toContain(
    `In use now: the key with fingerprint ${keys[0]!.fingerprint}.`,
  );

  await running.service.get(Ledgers).append({
    log: first.id,
    command: { id: 'after', digest: 'after' },
    by: { person: 'somebody', role: 'office' },
    streams: [
      {
        stream: 'test/after',
        expectedVersion: 0,
        events: [{ type: 'test/1', data: { is: 'new' } }],
      },
    ],
  });
  const next = await signing.checkpoint(first.id);
  const [now, former] = signing.verifiers(first.id);
  expect(now?.text).toBe(keys[0]!.text);
  expect(openCheckpoint(next!.note, [now!]).size).toBe(next?.size);
  expect(() => openCheckpoint(next!.note, [former!])).toThrow('not signed by a key that is known');

  const service = await startService(
    new Settings({ ...settingsFor(running.database.serviceUrl), keysFolder: copied }),
  );
  try {
    expect(await service.get(Signing).checkpoint(second.id)).toBeUndefined();
  } finally {
    await service.stop();
  }
  const seed = (folder: string) => readFileSync(path.join(folder, 'signing-key.json'), 'utf8');
  expect(seed(at().keysFolder)).not.toContain(JSON.parse(seed(copied)).seed as string);
  rmSync(copied, { recursive: true });
}, 120_000);
