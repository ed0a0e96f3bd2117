// A service process of the crash drill: 32 writers and one list. It says on standard output what it
// tries and what was acknowledged, and is killed at some moment.

import { writeSync } from 'node:fs';
import {
  companyPool,
  createLists,
  createPostgresLedger,
  createSignals,
  openServicePool,
} from '#ledger';
import type { AppendRequest, AppendResult } from '#ledger';
import { COUNTED, LOG } from './ledger-counted.js';

interface Input {
  readonly serviceUrl: string;
  readonly name: string;
  /** Commands whose outcome the process before never learned. */
  readonly unknown: readonly AppendRequest[];
}

const WRITERS = 32;
const STREAMS = 12;
const input = JSON.parse(process.argv[2] ?? '{}') as Input;
const service = openServicePool(input.serviceUrl, 8);
const pool = companyPool(service);
const signals = createSignals();
const ledger = createPostgresLedger({ pool, signals });
const onFault = () => undefined;
const lists = createLists({ ledger, pool, lists: [COUNTED], signals, onFault, pollMs: 100 });
let stopping = false;

process.on('SIGTERM', () => {
  stopping = true;
});

/** Is out before anything else happens: what is tried must be known however soon the kill comes. */
const say = (line: string) => writeSync(1, `${line}\n`);

/** Asks until there is an answer: a fault leaves the outcome unknown, the same command tells. */
async function send(request: AppendRequest): Promise<AppendResult> {
  say(`try ${JSON.stringify(request)}`);
  for (;;) {
    try {
      const result = await ledger.append(request);
      say(`answer ${JSON.stringify({ id: request.command.id, ...result })}`);
      return result;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
}

async function write(writer: number): Promise<void> {
  const versions = new Map<string, number>();
  for (let n = 0; !stopping; n++) {
    const names = [
      `s${(writer + n) % STREAMS}`,
      ...(n % 5 === 0 ? [`own-${input.name}-${writer}`] : []),
    ];
    const result = await send({
      log: LOG,
      command: { id: `${input.name}-${writer}-${n}`, digest: 'd' },
      by: { person: `p${writer}`, role: 'estimator' },
      streams: names.map((stream) => ({
        stream,
        expectedVersion: versions.get(stream) ?? 0,
        events: [{ type: 'written/1', data: { writer, n } }],
      })),
    });
    if (result.kind === 'wrong-version') versions.set(result.stream, result.actual);
    if (result.kind === 'appended' || result.kind === 'repeated') {
      for (const [stream, version] of Object.entries(result.versions))
        versions.set(stream, version);
    }
  }
}

lists.follow(LOG);
await Promise.all(input.unknown.map(send));
await Promise.all(Array.from({ length: WRITERS }, (_, writer) => write(writer)));
await lists.stop();
await service.end();
