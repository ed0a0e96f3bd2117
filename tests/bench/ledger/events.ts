// The load: events of about 600 bytes of JSON, different every time, in streams of fifty.

import { randomBytes } from 'node:crypto';

export interface LoadEvent {
  readonly type: string;
  readonly data: Record<string, unknown>;
}

export const STREAM_LENGTH = 50;
let made = 0;
let streams = 0;

export function loadEvent(): LoadEvent {
  const n = ++made;
  const data = {
    decision: randomBytes(8).toString('hex'),
    job: `J-${String(n % 100_000).padStart(6, '0')}`,
    surface: `s${n % 12}`,
    chosen: {
      gauge: 24,
      depth: { v: '1.75', u: 'in' },
      spacing: { v: String(16 + (n % 9)), u: 'in' },
    },
    inputs: { span: 4.5 + (n % 7) / 10, uplift: 45.25 + (n % 50), snow: 30, deck: 'plywood-15-32' },
    rules: ['GAUGE-01', 'GAUGE-02', 'SUB-03', 'HAZ-04'],
    reason: `Number ${n}: the lightest sheet whose allowable load exceeds the governing combination.`,
    trace: randomBytes(48).toString('base64'),
    note: randomBytes(36).toString('base64'),
  };
  return { type: 'gauge-selected/1', data };
}

export function loadEvents(count: number): LoadEvent[] {
  return Array.from({ length: count }, loadEvent);
}

export type AppendTo = (stream: string, version: number, events: LoadEvent[]) => Promise<unknown>;

/** Each client fills a stream of fifty, then opens the next: creation and growth are both paid for. */
export function streamLoad(perAppend: number, appendOf: (client: number) => AppendTo) {
  const places = new Map<number, { stream: string; version: number }>();
  return async (client: number): Promise<void> => {
    let place = places.get(client);
    if (place === undefined || place.version + perAppend > STREAM_LENGTH) {
      place = { stream: `job-${++streams}`, version: 0 };
      places.set(client, place);
    }
    await appendOf(client)(place.stream, place.version, loadEvents(perAppend));
    place.version += perAppend;
  };
}
