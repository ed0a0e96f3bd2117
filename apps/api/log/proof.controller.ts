// What a signed checkpoint proves of a job: which of its entries lie under it, signed by which key, and
// that the way from the last of them to the root holds.

import { Controller, Param } from '@nestjs/common';
import { z } from 'zod';
import { canonical, openCheckpoint, openProof } from '#ledger';
import { Ledgers } from '../data/ledgers.js';
import { Signing } from '../data/signing.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { JobId } from '../jobs/jobs.controller.js';
import { jobStream } from '../jobs/job-stream.js';
import { Problem } from '../problems.js';
import { KeySchema, publicKeys } from '../data/public-keys.js';
import { TimeStamps } from './time-stamps.js';
import { TimeStampSchema } from './time-words.js';

const ProofSchema = z
  .object({
    signs: z.boolean().describe('whether this installation signs checkpoints at all'),
    refused: z.string().nullable().describe('why nothing was signed, where the signer refused'),
    checkpoint: z
      .object({ origin: z.string(), size: z.int(), root: z.string(), note: z.string() })
      .nullable(),
    keys: z.array(KeySchema),
    entries: z.object({ count: z.int(), first: z.int(), last: z.int(), last_at: z.string() }),
    path: z
      .int()
      .nullable()
      .describe('hashes from the last entry to the root, as they were checked just now'),
    time_stamp: TimeStampSchema.describe(
      'of the first stamped checkpoint over all entries of the job',
    ),
  })
  .meta({ id: 'JobProof' });

@Controller('api/jobs')
export class ProofController {
  constructor(
    private readonly ledgers: Ledgers,
    private readonly signing: Signing,
    private readonly times: TimeStamps,
  ) {}

  @Route('GET', ':id/proof', {
    says: 'What a signed checkpoint proves of the entries of a job',
    who: ['office', 'project-manager', 'warranty-reviewer', 'administrator'],
    gives: ProofSchema,
  })
  async proof(@Asking() { company }: SignedIn, @Param('id', { schema: JobId }) id: string) {
    const entries = await this.ledgers.ledger.readStream(company.id, jobStream(id));
    const [first, last] = [entries[0], entries.at(-1)];
    if (!first || !last) throw new Problem('not-found', 'There is no such job.');
    const verifiers = this.signing.verifiers(company.id);
    const signed = verifiers.length > 0 ? await this.signing.checkpoint(company.id) : undefined;
    const proof = signed && (await this.signing.proof(company.id, last.pos))?.toString();
    if (proof) openProof(proof, last.pos, canonical(last), verifiers);
    const opened = signed && openCheckpoint(signed.note, verifiers);
    return {
      signs: verifiers.length > 0,
      refused:
        verifiers.length > 0 && !signed
          ? 'It does not continue what was signed before; the log of the service says why.'
          : null,
      checkpoint: opened
        ? {
            origin: opened.origin,
            size: opened.size,
            root: opened.root.toString('base64'),
            note: signed.note,
          }
        : null,
      keys: publicKeys(verifiers),
      entries: {
        count: entries.length,
        first: first.pos,
        last: last.pos,
        last_at: last.recordedAt,
      },
      path: proof ? proof.slice(0, proof.indexOf('\n\n')).split('\n').length - 2 : null,
      time_stamp: await this.times.over(company.id, last.pos),
    };
  }
}
