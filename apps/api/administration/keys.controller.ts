// The signing keys in public form, and each change of key as its entry stands in the record.

import { Controller } from '@nestjs/common';
import { z } from 'zod';
import { KEY_CHANGED, KEY_STREAM } from '#ledger';
import { Ledgers } from '../data/ledgers.js';
import { KeySchema, publicKeys } from '../data/public-keys.js';
import { Signing } from '../data/signing.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';

const KeysSchema = z
  .object({
    signs: z.boolean(),
    keys: z.array(KeySchema),
    changes: z.array(
      z.object({ pos: z.int(), at: z.string(), by: z.string(), from: z.string(), to: z.string() }),
    ),
    checkpoint: z
      .object({ size: z.int(), note: z.string() })
      .nullable()
      .describe('the last one that was signed; keep it outside this office'),
  })
  .meta({ id: 'SigningKeys' });

@Controller('api/keys')
export class KeysController {
  constructor(
    private readonly ledgers: Ledgers,
    private readonly signing: Signing,
  ) {}

  @Route('GET', '', {
    says: 'Signing keys in public form, changes of key, and the last checkpoint',
    who: ['administrator', 'warranty-reviewer'],
    gives: KeysSchema,
  })
  async keys(@Asking() { company }: SignedIn) {
    const { ledger } = this.ledgers;
    const verifiers = this.signing.verifiers(company.id);
    const [changes, last] = await Promise.all([
      ledger.readStream(company.id, KEY_STREAM),
      ledger.lastCheckpoint(company.id),
    ]);
    return {
      signs: verifiers.length > 0,
      keys: publicKeys(verifiers),
      changes: changes
        .filter(({ type }) => type === KEY_CHANGED)
        .map(({ pos, recordedAt, by, data }) => {
          const { from, to } = data as { from: string; to: string };
          return { pos, at: recordedAt, by: by.person, from, to };
        }),
      checkpoint: last ? { size: last.size, note: last.note } : null,
    };
  }
}
