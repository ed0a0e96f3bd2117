// What this process remembers of a log: its head and its streams' heads, as they are once all that was
// sent is committed. The compared head proves it current; a survey replaces it.

import { NEW_STREAM, sealBatch } from './batch.js';
import type { Drafted, SealedBatch } from './batch.js';
import type { AppendResult } from './ledger.js';
import type { CommandRow, LogState, StreamHead, Survey } from './store.js';

const REMEMBERED_STREAMS = 10_000;

export class LogMemory {
  state: LogState | undefined;
  private readonly heads = new Map<string, StreamHead>();

  /** Whether every stream's head is remembered; a stream said to be new is tried without looking. */
  knows(requests: readonly Drafted[]): boolean {
    if (this.state === undefined) return false;
    return requests.every(({ streams }) =>
      streams.every((each) => each.expectedVersion === 0 || this.heads.has(each.stream)),
    );
  }

  fits({ streams }: Drafted): boolean {
    return streams.every((each) => this.versionOf(each.stream) === each.expectedVersion);
  }

  /** The batch of requests that all fit; from now on it counts as committed here. */
  seal(requests: readonly Drafted[], now: number): SealedBatch {
    const headOf = (stream: string) => this.heads.get(stream);
    const sealed = sealBatch(this.state as LogState, headOf, requests, now);
    this.state = sealed.batch.after;
    for (const [stream, head] of sealed.heads) this.remember(stream, head);
    return sealed;
  }

  /** What is remembered of other streams stays if the head stood still. */
  learn(survey: Survey, streams: readonly string[]): void {
    if (survey.log.pos !== this.state?.pos) this.heads.clear();
    this.state = survey.log;
    for (const stream of streams) this.remember(stream, survey.streams.get(stream) ?? NEW_STREAM);
  }

  forget(): void {
    this.state = undefined;
    this.heads.clear();
  }

  forgetOldest(): void {
    for (const oldest of this.heads.keys()) {
      if (this.heads.size <= REMEMBERED_STREAMS) return;
      this.heads.delete(oldest);
    }
  }

  /** The "no", or the earlier answer, that a survey gives to a request; undefined: it may go on. */
  answer(request: Drafted, survey: Survey): AppendResult | undefined {
    const known = survey.commands.get(request.command.id);
    if (known !== undefined) {
      if (known.digest !== request.command.digest) return { kind: 'command-reused' };
      return { kind: 'repeated', ...withoutKeys(known) };
    }
    const wrong = request.streams.find(
      (each) => this.versionOf(each.stream) !== each.expectedVersion,
    );
    if (wrong === undefined) return undefined;
    return { kind: 'wrong-version', stream: wrong.stream, actual: this.versionOf(wrong.stream) };
  }

  private versionOf(stream: string): number {
    return (this.heads.get(stream) ?? NEW_STREAM).version;
  }

  private remember(stream: string, head: StreamHead): void {
    this.heads.delete(stream);
    this.heads.set(stream, head);
  }
}

export function withoutKeys({ id: _id, digest: _digest, ...appended }: CommandRow) {
  return appended;
}
