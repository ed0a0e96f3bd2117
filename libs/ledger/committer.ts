// Group commit of one log: requests wait for at most one round trip, then all that wait go in one
// statement. The head is compared and set, so that "the head is where I left it" proves that what
// this process remembers of streams and tree is current, however many processes write.

import { NEW_STREAM, sealBatch } from './batch.js';
import type { Drafted, SealedBatch } from './batch.js';
import type { AppendResult } from './ledger.js';
import type { CommandRow, LogState, Store, StreamHead, Survey } from './store.js';

export interface CommitterOptions {
  readonly log: string;
  readonly store: Pick<Store, 'survey' | 'commit'>;
  /** Microseconds since 1970. */
  readonly now: () => number;
  readonly onCommitted: (pos: number) => void;
  /** As soon as more bytes than these wait, further requests are refused. */
  readonly queueBytes: number;
}

interface Request extends Drafted {
  readonly resolve: (result: AppendResult) => void;
  readonly reject: (fault: unknown) => void;
}

const REMEMBERED_STREAMS = 10_000;

export class Committer {
  private queue: Request[] = [];
  private queuedBytes = 0;
  private running: Promise<void> | undefined;
  private state: LogState | undefined;
  private readonly heads = new Map<string, StreamHead>();

  constructor(private readonly options: CommitterOptions) {}

  /** @throws what the store throws; whether the request was kept, repeating the command tells */
  append(drafted: Drafted): Promise<AppendResult> {
    if (this.queuedBytes > this.options.queueBytes) return Promise.resolve({ kind: 'queue-full' });
    return new Promise((resolve, reject) => {
      this.queue.push({ ...drafted, resolve, reject });
      this.queuedBytes += drafted.bytes;
      this.running ??= this.run();
    });
  }

  async idle(): Promise<void> {
    await this.running;
  }

  private async run(): Promise<void> {
    await nextTurn();
    while (this.queue.length > 0) {
      const batch = this.takeBatch();
      try {
        await this.settle(batch);
      } catch (fault) {
        this.state = undefined;
        this.heads.clear();
        for (const request of batch) request.reject(fault);
      }
      this.forgetOldest();
      await nextTurn();
    }
    this.running = undefined;
  }

  /**
   * All that wait, but of each stream and of each command the first only; what is left keeps its
   * order. The queue's bound is therefore the batch's, and nobody waits for more than the batch
   * under way, the next one, and those of the own stream.
   */
  private takeBatch(): Request[] {
    const batch: Request[] = [];
    const left: Request[] = [];
    const seen = new Set<string>();
    for (const request of this.queue) {
      const keys = request.streams.map(({ stream }) => stream);
      keys.push(`\0${request.command.id}`);
      const free = keys.every((key) => !seen.has(key));
      for (const key of keys) seen.add(key);
      (free ? batch : left).push(request);
    }
    this.queue = left;
    this.queuedBytes = left.reduce((sum, request) => sum + request.bytes, 0);
    return batch;
  }

  /** Answers every request of the batch, however often another writer comes first. */
  private async settle(batch: readonly Request[]): Promise<void> {
    let open = batch;
    let survey = this.knows(open) ? undefined : await this.look(open);
    for (;;) {
      if (survey === undefined && !open.every((each) => this.fits(each))) {
        survey = await this.look(open);
      }
      if (survey !== undefined) open = this.answer(open, survey);
      if (open.length === 0) return;
      const state = this.state as LogState;
      const headOf = (stream: string) => this.heads.get(stream);
      const sealed = sealBatch(state, headOf, open, this.options.now());
      const outcome = await this.options.store.commit(this.options.log, sealed.batch);
      if (outcome === 'committed') {
        this.accept(open, sealed);
        return;
      }
      survey = await this.look(open);
      const explained =
        survey.log.pos > state.pos || (outcome === 'taken' && this.clashes(open, survey));
      if (!explained) {
        throw new Error(
          `The log ${this.options.log} refused a batch at its current head ${state.pos}.`,
        );
      }
    }
  }

  /** Whether every stream's head is remembered; a stream said to be new is tried without looking. */
  private knows(open: readonly Request[]): boolean {
    if (this.state === undefined) return false;
    return open.every(({ streams }) =>
      streams.every((each) => each.expectedVersion === 0 || this.heads.has(each.stream)),
    );
  }

  private fits({ streams }: Request): boolean {
    return streams.every((each) => this.versionOf(each.stream) === each.expectedVersion);
  }

  private versionOf(stream: string): number {
    return (this.heads.get(stream) ?? NEW_STREAM).version;
  }

  /** Head, streams and commands in one snapshot; what is remembered stays if the head stood still. */
  private async look(open: readonly Request[]): Promise<Survey> {
    const streams = open.flatMap((request) => request.streams.map(({ stream }) => stream));
    const commands = open.map(({ command }) => command.id);
    const survey = await this.options.store.survey(this.options.log, streams, commands);
    if (survey.log.pos !== this.state?.pos) this.heads.clear();
    this.state = survey.log;
    for (const stream of streams) this.remember(stream, survey.streams.get(stream) ?? NEW_STREAM);
    return survey;
  }

  /** Answers repeated commands and wrong versions; the rest is still open. */
  private answer(open: readonly Request[], survey: Survey): readonly Request[] {
    return open.filter((request) => {
      const known = survey.commands.get(request.command.id);
      if (known !== undefined) {
        request.resolve(
          known.digest === request.command.digest
            ? { kind: 'repeated', ...withoutKeys(known) }
            : { kind: 'command-reused' },
        );
        return false;
      }
      const wrong = request.streams.find(
        (each) => this.versionOf(each.stream) !== each.expectedVersion,
      );
      if (wrong === undefined) return true;
      const { stream } = wrong;
      request.resolve({ kind: 'wrong-version', stream, actual: this.versionOf(stream) });
      return false;
    });
  }

  private clashes(open: readonly Request[], survey: Survey): boolean {
    return open.some((each) => survey.commands.has(each.command.id) || !this.fits(each));
  }

  private accept(open: readonly Request[], { batch, heads }: SealedBatch): void {
    this.state = batch.after;
    for (const [stream, head] of heads) this.remember(stream, head);
    this.options.onCommitted(batch.after.pos);
    open.forEach((request, i) => {
      request.resolve({ kind: 'appended', ...withoutKeys(batch.commands[i] as CommandRow) });
    });
  }

  private remember(stream: string, head: StreamHead): void {
    this.heads.delete(stream);
    this.heads.set(stream, head);
  }

  private forgetOldest(): void {
    for (const oldest of this.heads.keys()) {
      if (this.heads.size <= REMEMBERED_STREAMS) return;
      this.heads.delete(oldest);
    }
  }
}

function withoutKeys({ id: _id, digest: _digest, ...appended }: CommandRow) {
  return appended;
}

function nextTurn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
