// Backups are made outside the service, with the database's own tools; here an administrator notes that
// one was made, or that one was restored on trial. Each note is an entry of the record.

import { Body, Controller } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { z } from 'zod';
import { Day, Words } from '#jobs/contract';
import { Ledgers, oneStream } from '../data/ledgers.js';
import { Header } from '../http/header.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Key } from '../jobs/jobs.controller.js';
import { Problem } from '../problems.js';

const STREAM = 'office/backups';
const Note = z.strictObject({
  what: z.enum(['made', 'restored-on-trial']),
  on: Day,
  where: Words.describe('where the copy lies, in words; no secret'),
});
const Noted = Note.extend({ pos: z.int(), at: z.string(), by: z.string() });
const BackupsSchema = z.object({ noted: z.array(Noted) }).meta({ id: 'Backups' });

@Controller('api/backups')
export class BackupsController {
  constructor(private readonly ledgers: Ledgers) {}

  @Route('GET', '', {
    says: 'Backups as administrators noted them, newest first',
    who: ['administrator'],
    gives: BackupsSchema,
  })
  async list(@Asking() { company }: SignedIn) {
    const events = await this.ledgers.ledger.readStream(company.id, STREAM);
    return {
      noted: events
        .map(({ pos, recordedAt, by, data }) => ({
          ...(data as z.output<typeof Note>),
          pos,
          at: recordedAt,
          by: by.person,
        }))
        .reverse(),
    };
  }

  @Route('POST', '', {
    says: 'Note that a backup was made, or restored on trial',
    who: ['administrator'],
    answers: 'created',
    headers: { 'Idempotency-Key': 'the same key with the same note is kept once' },
    gives: z.object({ pos: z.int() }),
    fails: ['conflict'],
  })
  async note(
    @Asking() { company, person }: SignedIn,
    @Body({ schema: Note }) data: z.output<typeof Note>,
    @Header('idempotency-key', Key) key: string | undefined,
  ) {
    const by = { person: person.id, role: 'administrator' };
    const written = {
      company: company.id,
      by,
      commandId: `${person.id}/${key ?? uuid()}`,
      asked: data,
    };
    for (;;) {
      const { length: version } = await this.ledgers.ledger.readStream(company.id, STREAM);
      const events = [{ type: 'backup-noted/1', data }];
      const done = await this.ledgers.append(oneStream(written, STREAM, version, events));
      if (done.kind === 'command-reused')
        throw new Problem('conflict', 'This key was used for another note.');
      if (done.kind !== 'wrong-version') return { pos: done.last };
    }
  }
}
