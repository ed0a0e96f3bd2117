// Group commit of one log: requests wait for at most one round trip, then all that wait go in one
// statement. The head is compared and set, so that "the head is where I left it" proves that what
// this process remembers is current, however many processes write. While one batch is under way a
// second may follow it on the same connection: it compares with the head that the first one sets,
// so that it fails whenever the first one fails.

import type { Drafted, SealedBatch } from './batch.js';
import { watchClock } from './clock-watch.js';
import type { ClockStep } from './clock-watch.js';
import type { AppendResult } from './ledger.js';
import { LogMemory, withoutKeys } from './log-memory.js';
import { RequestQueue } from './request-queue.js';
import type { Request } from './request-queue.js';
import type { CommandRow, CommitOutcome, Store, Survey, Writer } from './store.js';

export interface CommitterOptions {
  readonly log: string;
  readonly store: Pick<Store, 'write'>;
  /** Microseconds since 1970. */
  readonly now: () => number;
  readonly onCommitted: (pos: number) => void;
  readonly onClockStep: (step: ClockStep) => void;
  /** As soon as more bytes than these wait, further requests are refused. */
  readonly queueBytes: number;
}

/** A batch that was sent. */
interface Flight {
  readonly requests: readonly Request[];
  readonly sealed: SealedBatch;
  readonly outcome: Promise<unknown>;
  /** Undefined until it is known. */
  landed: { readonly outcome: CommitOutcome } | { readonly fault: unknown } | undefined;
}

/** A batch that was not committed, until a survey explains why. */
interface Lost {
  readonly seen: number;
  readonly outcome: CommitOutcome;
}

/** A second batch follows the first only with at least so many events, and half as many as that. */
const WORTH_FOLLOWING = 4;

/** After so many batches the connection is given back, so that no busy log keeps it from others. */
const BATCHES_IN_A_ROW = 100;

export class Committer {
  private readonly queue = new RequestQueue();
  private running: Promise<void> | undefined;
  private readonly memory = new LogMemory();
  private readonly flights: Flight[] = [];
  private lost: Lost | undefined;
  private readonly stepOf = watchClock();
  private arrived: () => void = () => undefined;

  constructor(private readonly options: CommitterOptions) {}

  /** @throws what the store throws; whether the request was kept, repeating the command tells */
  append(drafted: Drafted): Promise<AppendResult> {
    if (this.queue.bytes > this.options.queueBytes) return Promise.resolve({ kind: 'queue-full' });
    return new Promise((resolve, reject) => {
      const { command, streams, bytes, events } = drafted;
      this.queue.add({ command, streams, bytes, events, resolve, reject });
      this.running ??= this.run();
      this.arrived();
    });
  }

  async idle(): Promise<void> {
    await this.running;
  }

  private async run(): Promise<void> {
    await settled();
    while (this.queue.length > 0) {
      let serving = false;
      try {
        await this.options.store.write(this.options.log, (writer) => {
          serving = true;
          return this.serve(writer);
        });
      } catch (fault) {
        if (!serving) for (const request of this.takeBatch()) request.reject(fault);
      }
    }
    this.running = undefined;
  }

  /** Until nothing waits; a fault has reached its callers before it ends this. */
  private async serve(writer: Writer): Promise<void> {
    for (let batches = 0; this.queue.length > 0 || this.flights.length > 0;) {
      if (batches < BATCHES_IN_A_ROW && this.mayLaunch()) {
        batches++;
        await this.go(writer, this.takeBatch());
      } else if (this.flights.length > 0) {
        await this.flightOrArrival(this.flights[0] as Flight);
        if (this.flights[0]?.landed !== undefined) await this.land(this.flights[0]);
        await settled();
      } else {
        return;
      }
    }
  }

  private mayLaunch(): boolean {
    const [first, second] = this.flights;
    if (this.queue.length === 0 || second !== undefined) return false;
    if (first === undefined) return true;
    const { events } = first.sealed.batch;
    return this.queue.events >= Math.max(WORTH_FOLLOWING, events.length / 2);
  }

  /**
   * All that wait, or half of it when both halves are worth a batch. The queue's bound is therefore
   * the batch's, and nobody waits for more than two batches and those of the own stream.
   */
  private takeBatch(): Request[] {
    const halve =
      this.flights.length === 0 &&
      this.lost === undefined &&
      this.queue.events >= 2 * WORTH_FOLLOWING;
    return this.queue.take(halve ? this.queue.events / 2 : Infinity);
  }

  /** Sends a batch that fits what is remembered; any other one is looked at when nothing flies. */
  private async go(writer: Writer, requests: readonly Request[]): Promise<void> {
    const fits = this.memory.knows(requests) && requests.every((each) => this.memory.fits(each));
    if (fits) {
      try {
        this.launch(writer, requests);
      } catch (fault) {
        for (const request of requests) request.reject(fault);
        throw fault;
      }
    } else if (this.flights.length > 0) {
      this.queue.putBack(requests);
      while (this.flights[0] !== undefined) await this.land(this.flights[0]);
    } else {
      await this.settle(writer, requests);
    }
    this.memory.forgetOldest();
  }

  private launch(writer: Writer, requests: readonly Request[]): Flight {
    const now = this.options.now();
    const step = this.stepOf(now, this.memory.state?.lastAt ?? 0);
    const sealed = this.memory.seal(requests, now);
    if (step !== undefined) this.options.onClockStep(step);
    const outcome = writer.commit(sealed.batch).then(
      (known) => (flight.landed = { outcome: known }),
      (fault: unknown) => (flight.landed = { fault }),
    );
    const flight: Flight = { requests, sealed, outcome, landed: undefined };
    this.flights.push(flight);
    return flight;
  }

  private async flightOrArrival(flight: Flight): Promise<void> {
    const arrival = new Promise<void>((resolve) => (this.arrived = resolve));
    await Promise.race([flight.outcome, arrival]);
  }

  /** Answers the callers of a committed batch; otherwise all that flew waits again, in its order. */
  private async land(first: Flight): Promise<void> {
    await first.outcome;
    if (isCommitted(first)) {
      this.flights.shift();
      this.accept(first);
      return;
    }
    const down = this.flights.splice(0);
    await Promise.all(down.map((flight) => flight.outcome));
    this.memory.forget();
    const faulty = down.filter(({ landed }) => landed !== undefined && 'fault' in landed);
    const back = down.filter((flight) => !faulty.includes(flight));
    this.queue.putBack(back.flatMap(({ requests }) => requests));
    for (const { requests, landed } of faulty) {
      for (const request of requests) request.reject((landed as { fault: unknown }).fault);
    }
    if (faulty[0] !== undefined) throw (faulty[0].landed as { fault: unknown }).fault;
    const { outcome } = first.landed as { outcome: CommitOutcome };
    this.lost = { seen: first.sealed.batch.seen, outcome };
  }

  private accept({ requests, sealed }: Flight): void {
    const { after, commands } = sealed.batch;
    this.options.onCommitted(after.pos);
    requests.forEach((request, i) => {
      request.resolve({ kind: 'appended', ...withoutKeys(commands[i] as CommandRow) });
    });
  }

  /** Reads head, streams and commands in one snapshot, answers what it answers, sends the rest. */
  private async settle(writer: Writer, requests: readonly Request[]): Promise<void> {
    try {
      const streams = requests.flatMap((each) => each.streams.map(({ stream }) => stream));
      const commands = requests.map(({ command }) => command.id);
      const survey = await writer.survey(streams, commands);
      this.memory.learn(survey, streams);
      const answers = requests.map((request) => this.memory.answer(request, survey));
      this.explainLoss(survey, answers);
      answers.forEach((answer, i) => answer && requests[i]?.resolve(answer));
      const open = requests.filter((_, i) => answers[i] === undefined);
      if (open.length > 0) this.launch(writer, open);
    } catch (fault) {
      this.memory.forget();
      for (const request of requests) request.reject(fault);
      throw fault;
    }
  }

  /** A batch refused at a head that did not move, by nothing that is there, is a fault. */
  private explainLoss(survey: Survey, answers: readonly (AppendResult | undefined)[]): void {
    const { lost } = this;
    this.lost = undefined;
    if (lost === undefined || survey.log.pos > lost.seen) return;
    if (lost.outcome === 'taken' && answers.some((answer) => answer !== undefined)) return;
    throw new Error(
      `The log ${this.options.log} refused a batch at its current head ${survey.log.pos}.`,
    );
  }
}

function isCommitted({ landed }: Flight): boolean {
  return landed !== undefined && 'outcome' in landed && landed.outcome === 'committed';
}

/** When all that can go on without waiting has gone on: callers just answered may have asked again. */
function settled(): Promise<void> {
  return new Promise((resolve) => process.nextTick(resolve));
}
