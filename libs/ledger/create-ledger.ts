// A ledger over a store: checks requests, drafts their bodies, commits in groups, reads with alarm.

import { createHash } from 'node:crypto';
import type { ClockStep } from './clock-watch.js';
import { Committer } from './committer.js';
import { readBody, systemRandomness } from './envelope.js';
import type { Randomness } from './envelope.js';
import { draftRequest } from './draft-request.js';
import type { Ledger, ReadOptions, Recorded } from './ledger.js';
import { createSignals } from './signals.js';
import type { Signals } from './signals.js';
import type { Store } from './store.js';
import { verifyLog } from './verify-log.js';
import { formatMicros, normalTime } from './time.js';

export interface LedgerOptions {
  /** Microseconds since 1970; the process clock unless given. */
  readonly now?: () => number;
  /** The process clock was set back behind the log's last entry; once for each step. */
  readonly onClockStep?: (log: string, step: ClockStep) => void;
  readonly random?: Randomness;
  readonly queueBytes?: number;
  /** Shared with the lists that follow this ledger. */
  readonly signals?: Signals;
}

const QUEUE_BYTES = 4 * 1024 * 1024;

export function createLedger(store: Store, options: LedgerOptions = {}): Ledger {
  const { random = systemRandomness, signals = createSignals() } = options;
  const committers = new Map<string, Committer>();
  const committer = (log: string): Committer => {
    const known = committers.get(log);
    if (known !== undefined) return known;
    const made = new Committer({
      log,
      store,
      now: options.now ?? (() => Date.now() * 1000),
      onCommitted: (pos) => signals.appended(log, pos),
      onClockStep: (step) => options.onClockStep?.(log, step),
      queueBytes: options.queueBytes ?? QUEUE_BYTES,
    });
    committers.set(log, made);
    return made;
  };
  return {
    createLog: (log) => store.createLog(log),
    append: async (request) => committer(request.log).append(draftRequest(request, random)),
    readStream: (log, stream, wanted = {}) => readStream(store, log, stream, wanted),
    readAll: (log, page) => readAll(store, log, page),
    head: async (log) => {
      const { pos, root, lastAt } = (await store.survey(log, [], [])).log;
      return { pos, root, lastAt: pos === 0 ? '' : formatMicros(lastAt) };
    },
    waitFor: (log, list, pos, ms) => waitFor(store, signals, { log, list, pos, ms }),
    onAppended: (listener) => signals.onAppended(listener),
    leaves: (log, start, end) => store.readLeaves(log, start, end),
    checkpoints: (log) => store.checkpoints(log),
    lastCheckpoint: (log) => store.lastCheckpoint(log),
    keepCheckpoint: (log, checkpoint) => store.keepCheckpoint(log, checkpoint),
    timeStamps: (log, from = 0, most) => store.timeStamps(log, from, most),
    lastTimeStamp: (log) => store.lastTimeStamp(log),
    keepTimeStamp: (log, stamp) => store.keepTimeStamp(log, stamp),
    keepIssued: async (log, bytes, mediaType) => {
      const digest = createHash('sha256').update(bytes).digest();
      await store.keepIssued(log, digest, mediaType, Buffer.from(bytes));
      return digest.toString('hex');
    },
    issued: (log, digest) => store.issued(log, Buffer.from(digest, 'hex')),
    eraseIssued: (log, digest) => store.eraseIssued(log, Buffer.from(digest, 'hex')),
    verify: (log, checkpoints) => verifyLog(store, log, checkpoints),
    close: async () => {
      await Promise.all([...committers.values()].map((each) => each.idle()));
    },
  };
}

async function readStream(
  store: Store,
  log: string,
  stream: string,
  { from = 1, upTo = Number.MAX_SAFE_INTEGER, asOf }: ReadOptions,
): Promise<Recorded[]> {
  const bodies = await store.readStream(log, stream, from, upTo);
  const events = bodies.map(readBody);
  events.forEach((event, i) => {
    if (event.version !== from + i || event.stream !== stream) {
      throw new Error(
        `The stream ${stream} has no version ${from + i}: the log ${log} is damaged.`,
      );
    }
  });
  if (asOf === undefined) return events;
  const recorded = asOf.recordedAt === undefined ? FOR_EVER : normalTime(asOf.recordedAt);
  const effective = asOf.effectiveAt === undefined ? FOR_EVER : normalTime(asOf.effectiveAt);
  return events.filter((e) => e.recordedAt <= recorded && e.effectiveAt <= effective);
}

const FOR_EVER = '9999-12-31T23:59:59.999999Z';

async function readAll(
  store: Store,
  log: string,
  { after, limit }: { readonly after: number; readonly limit: number },
): Promise<Recorded[]> {
  const rows = await store.readAll(log, after, limit);
  return rows.map(({ pos, body }, i) => {
    const event = readBody(body);
    if (pos !== after + i + 1 || event.pos !== pos) {
      throw new Error(`The log ${log} has a hole at position ${after + i + 1}.`);
    }
    return event;
  });
}

interface Awaited {
  readonly log: string;
  readonly list: string;
  readonly pos: number;
  readonly ms: number;
}

/** Lists kept by another process are asked for; those of this one say when they advance. */
async function waitFor(store: Store, signals: Signals, wanted: Awaited): Promise<number> {
  const { log, list, pos, ms } = wanted;
  const end = Date.now() + ms;
  for (;;) {
    const reached = signals.reached(log, list);
    if (reached >= pos) return reached;
    const stored = await store.listPosition(log, list);
    if (stored >= pos || Date.now() >= end) return stored;
    await signals.nextAdvance(log, list, Math.min(ASK_EVERY, Math.max(1, end - Date.now())));
  }
}

const ASK_EVERY = 50;
