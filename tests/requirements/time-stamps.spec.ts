// Requirement 16 with the whole service: checkpoints are time-stamped outside of any request, by an
// authority of OpenSSL's; what it says wrongly is refused; without it work goes on, untimed.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import { newClient, verifyBundle } from '#ledger';
import { Signing } from '../../apps/api/data/signing.js';
import { Settings, startService, timeStampsFrom } from '../../apps/api/service.js';
import { TimeStamps, type TimeView } from '../../apps/api/log/time-stamps.js';
import { VerificationRuns } from '../../apps/api/log/verification-runs.js';
import { VerifyLogs } from '../../apps/api/log/verify-logs.js';
import { verifyWholeLog } from '../../apps/cli/verify-log.js';
import { readZip, writeZip } from '../../libs/ledger/zip.js';
import { openOne } from '../fuzz/open-one.js';
import { company, settingsFor, withService } from '../service.js';
import { makeAuthority, POLICY, serveAuthority, type AuthorityServer } from '../time-authority.js';

const authority = makeAuthority();
const stranger = makeAuthority();
let answer: (request: Buffer) => Buffer | undefined = () => undefined;
let server: AuthorityServer;
const RETRY_MS = 150;

// Hooks run in order: the authority is there before the service reads its address.
beforeAll(async () => {
  server = await serveAuthority((request) => answer(request));
});
const running = withService({
  keys: true,
  timeStamps: () => ({
    url: server.url,
    policy: POLICY,
    trusted: authority.trusted,
    retryMs: RETRY_MS,
  }),
});
let ours: Awaited<ReturnType<typeof people>>;
const people = () =>
  company(running, 'Ours', { administrator: ['administrator'], office: ['office'] });
beforeAll(async () => {
  ours = await people();
});
afterAll(async () => {
  await server.stop();
  authority.remove();
  stranger.remove();
});

const health = async () =>
  (await ours.administrator.get<{ time_stamp: TimeView }>('/health')).body.time_stamp;
const proof = async (job: string) =>
  (await ours.office.get<{ time_stamp: TimeView }>(`/jobs/${job}/proof`)).body.time_stamp;
/** The last run of the verification that is asked for now. */
const verified = async () => {
  const asked = await ours.administrator.send('POST', '/log/verifications', {});
  expect(asked.status).toBe(201);
  await running.service.get(VerifyLogs).idle();
  return (await running.service.get(VerificationRuns).standing(ours.id)).last;
};
const bundle = async (job: string): Promise<Buffer> => {
  const answered = await fetch(`${running.address}/api/jobs/${job}/evidence.zip?why=asked`, {
    headers: { cookie: ours.administrator.cookie },
  });
  expect(answered.status).toBe(200);
  return Buffer.from(await answered.arrayBuffer());
};

/** Asks until the condition holds; the failure shows what was last seen. */
async function until<T>(look: () => Promise<T>, holds: (seen: T) => boolean): Promise<T> {
  for (let i = 0; ; i++) {
    const seen = await look();
    if (holds(seen)) return seen;
    if (i > 600) throw new Error(`It never came: ${JSON.stringify(seen)}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

describe('requirement 16: the loss of the authority never blocks work, only marks "untimed"', () => {
  let job = '';

  test('silent: work goes on, proof and bundle say untimed, and the bundle holds', async () => {
    job = await openOne(ours.office);
    expect(await proof(job)).toMatchObject({ asks: true, stamp: null, fault: null });
    await until(
      async () => server.asked(),
      (asked) => asked > 0,
    );
    const report = verifyBundle(await bundle(job));
    expect(report.ok).toBe(true);
    expect(report.says.join(' ')).toMatch(/checkpoint of \d+ entries is untimed/);
  });

  test.each<[string, (request: Buffer) => Buffer, string]>([
    ['untrusted', (request) => stranger.reply(request), 'does not lead to a trusted one'],
    ['altered', (request) => flipLast(authority.reply(request)), 'signature of the time-stamp'],
    ['no reply', () => Buffer.from('<html>'), 'cannot be read'],
    ['too long', () => Buffer.alloc(70_000), 'longer than 65536 bytes'],
  ])('what it answers wrongly is refused and not kept: %s', async (_, wrong, says) => {
    answer = wrong;
    server.drop();
    const seen = await until(health, ({ trouble }) => trouble?.includes(says) === true);
    expect(seen.stamp).toBeNull();
    expect(seen.untimed).toBeGreaterThan(0);
  });

  test('back again: the same checkpoint is stamped by itself, without a new entry', async () => {
    answer = (request) => authority.reply(request);
    const stamped = await until(
      () => proof(job),
      ({ stamp }) => stamp !== null,
    );
    expect(stamped).toMatchObject({ fault: null, trouble: null, stamp: { by: SUBJECT } });
    expect(Math.abs(Date.parse(stamped.stamp?.at ?? '') - Date.now())).toBeLessThan(60_000);
    expect(await until(health, ({ untimed }) => untimed === null)).toMatchObject({ trouble: null });
    const asked = server.asked();
    await running.service.get(Signing).checkpoint(ours.id);
    await running.service.get(TimeStamps).idle();
    expect(server.asked()).toBe(asked);
  });

  test('the evidence carries the token: verify says who and when, and OpenSSL agrees', async () => {
    const bytes = await bundle(job);
    const files = readZip(bytes);
    const says = verifyBundle(bytes, { authority: authority.trusted }).says.join('\n');
    const [, size] =
      /checkpoint of (\d+) entries was time-stamped by O=Noon Time, CN=tsa at 20/.exec(says) ?? [
        undefined,
        '',
      ];
    expect(says).toContain('whose certificate you hold');
    const folder = mkdtempSync(path.join(tmpdir(), 'gauge-stamp-'));
    for (const end of ['tsq', 'tsr', 'pem'])
      writeFileSync(path.join(folder, `stamp.${end}`), files.get(`time-stamps/${size}.${end}`)!);
    const args = ['ts', '-verify', '-queryfile', 'stamp.tsq', '-in', 'stamp.tsr'];
    const openssl = spawnSync('openssl', [...args, '-CAfile', 'stamp.pem'], { cwd: folder });
    rmSync(folder, { recursive: true });
    expect(openssl.stdout.toString()).toContain('Verification: OK');
  });

  test('in a bundle a wrong token is a failure, a missing one is not', async () => {
    const files = readZip(await bundle(job));
    const reply = [...files.keys()].find((name) => name.endsWith('.tsr')) ?? '';
    const wrong = new Map(files).set(reply, flipLast(files.get(reply)!));
    expect(verifyBundle(writeZip(wrong))).toMatchObject({ ok: false });
    expect(verifyBundle(writeZip(wrong)).says.at(-1)).toMatch(
      /^Time-stamp of \d+ entries: The signature of the time-stamp does not fit\.$/,
    );
    const held = { authority: stranger.trusted };
    expect(verifyBundle(writeZip(files), held).says.at(-1)).toContain('not lead to a trusted one');
    const contents = JSON.parse(files.get('bundle.json')!.toString()) as Record<string, unknown>;
    delete contents['timeStamps'];
    const without = new Map(files).set('bundle.json', Buffer.from(JSON.stringify(contents)));
    const report = verifyBundle(writeZip(without));
    expect(report.ok).toBe(true);
    expect(report.says.join(' ')).toContain('is untimed');
  });

  test('a token altered where it is kept is said on the page and by the nightly verification', async () => {
    const owner = newClient({ connectionString: running.database.ownerUrl });
    await owner.connect();
    expect(await verified()).toMatchObject({ result: 'sound', faultSays: null });
    await expect(owner.query('DELETE FROM ledger.time_stamp')).rejects.toThrow('is refused');
    await owner.query(
      `SET session_replication_role = replica;
       UPDATE ledger.time_stamp SET reply = set_byte(reply, length(reply) - 2,
         get_byte(reply, length(reply) - 2) # 1)`,
    );
    await owner.end();
    const { serviceUrl } = running.database;
    const keysFolder = running.keysFolder ?? '';
    const fresh = await startService(new Settings({ ...settingsFor(serviceUrl), keysFolder }));
    const seen = await fresh.get(TimeStamps).over(ours.id, 1);
    await fresh.stop();
    const fault = 'The signature of the time-stamp does not fit.';
    expect(seen).toMatchObject({ asks: false, stamp: null, fault });
    const lines: string[] = [];
    const holds = await verifyWholeLog({
      serviceUrl: running.database.serviceUrl,
      dataFolder: '/nowhere',
      company: ours.id,
      keysFolder,
      held: undefined,
      say: (line) => lines.push(line),
    });
    expect(holds).toBe(false);
    expect(lines.join('\n')).toContain(fault);
    expect(await verified()).toMatchObject({
      result: 'damaged',
      faultPos: null,
      faultSays: expect.stringMatching(
        /^Time-stamp of \d+ entries: The signature .* does not fit\.$/,
      ),
    });
  });
});

describe('requirement 16: the settings name every fault', () => {
  const TIME_STAMP_CERTIFICATE = path.join(tmpdir(), 'no-such-certificate.pem');
  test.each([
    [{ TIME_STAMP_URL: 'http://time.example' }, 'go together'],
    [{ TIME_STAMP_URL: 'ftp://a', TIME_STAMP_CERTIFICATE, TIME_STAMP_POLICY: POLICY }, 'address'],
    [{ TIME_STAMP_URL: 'http://a', TIME_STAMP_CERTIFICATE, TIME_STAMP_POLICY: 'x' }, 'identifier'],
    [{ TIME_STAMP_URL: 'http://a', TIME_STAMP_CERTIFICATE, TIME_STAMP_POLICY: POLICY }, 'ENOENT'],
  ])('%j', (environment, says) => {
    expect(() => timeStampsFrom(environment)).toThrow(says);
  });
  test('none: off', () => expect(timeStampsFrom({})).toEqual({}));
});

const SUBJECT = 'O=Noon Time, CN=tsa';
const flipLast = (bytes: Buffer): Buffer => {
  const copy = Buffer.from(bytes);
  copy.writeUInt8(copy.readUInt8(copy.length - 2) ^ 1, copy.length - 2);
  return copy;
};
