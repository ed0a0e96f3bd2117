// An entry of the record as others hear of it: CloudEvents 1.0 in JSON, with ids and never with what an
// entry says. What it says is asked for under "dataref", by who may read it.

import { z } from 'zod';
import type { Recorded } from '#ledger';

export const CLOUD_EVENTS = 'application/cloudevents-batch+json';

const CloudEventSchema = z
  .object({
    specversion: z.literal('1.0'),
    id: z.string(),
    source: z.string(),
    type: z.string(),
    subject: z.string(),
    time: z.string().describe('when it was recorded'),
    sequence: z.string().describe('the position, with leading zeros'),
    dataref: z.string().describe('where the entry itself is read, by who may'),
    datacontenttype: z.literal('application/json'),
    data: z.object({
      position: z.int(),
      stream: z.string(),
      version: z.int(),
      recorded_at: z.string(),
      effective_at: z.string(),
      by: z.object({ person: z.string(), role: z.string() }),
    }),
  })
  .meta({ id: 'CloudEvent' });
export const CloudEventsSchema = z.array(CloudEventSchema);

const DIGITS = 16;

export function cloudEvent(event: Recorded): z.output<typeof CloudEventSchema> {
  const stream = withoutWords(event.stream);
  return {
    specversion: '1.0',
    id: event.id,
    source: `/api/log/${event.log}`,
    type: event.type,
    subject: stream,
    time: event.recordedAt,
    sequence: String(event.pos).padStart(DIGITS, '0'),
    dataref: `/api/log/events/${event.pos}`,
    datacontenttype: 'application/json',
    data: {
      position: event.pos,
      stream,
      version: event.version,
      recorded_at: event.recordedAt,
      effective_at: event.effectiveAt,
      by: { person: event.by.person, role: event.by.role },
    },
  };
}

/** A job's number is typed by a person and may hold a name. */
function withoutWords(stream: string): string {
  return stream.startsWith('job-number/') ? 'job-number' : stream;
}
