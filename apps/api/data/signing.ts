// Checkpoints of each company's log, signed with the installation's key, and proofs under them.
// Without a folder for the key nothing is signed, and papers carry no proof.

import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { createSigner, formatProof, openKeyRing, type Signer } from '#ledger';
import { Log } from '../http/log.js';
import { Ledgers } from './ledgers.js';
import { Settings } from './settings.js';

const SOON_MS = 250;

@Injectable()
export class Signing implements OnApplicationShutdown {
  private readonly signer: Signer | undefined;
  private readonly pending = new Map<string, NodeJS.Timeout>();

  constructor(
    settings: Settings,
    ledgers: Ledgers,
    private readonly log: Log,
  ) {
    const { keysFolder } = settings;
    if (keysFolder === undefined) return;
    mkdirSync(keysFolder, { recursive: true, mode: 0o700 });
    this.signer = createSigner({
      ledger: ledgers.ledger,
      folder: keysFolder,
      origin: originOf,
      keys: openKeyRing(path.join(keysFolder, 'signing-key.json')),
    });
  }

  /** A checkpoint before long; several in a row become one. */
  soon(company: string): void {
    if (!this.signer || this.pending.has(company)) return;
    const timer = setTimeout(() => {
      this.pending.delete(company);
      void this.checkpoint(company).catch((err: unknown) =>
        this.log.error({ company, err }, 'a checkpoint failed'),
      );
    }, SOON_MS);
    this.pending.set(company, timer.unref());
  }

  /** C2SP tlog-proof that this position is in the log under a checkpoint signed now. */
  async proof(company: string, pos: number): Promise<Buffer | undefined> {
    const signed = await this.checkpoint(company);
    if (!signed || !this.signer) return undefined;
    const hashes = await this.signer.tree(company).inclusion(pos, signed.size);
    return Buffer.from(formatProof(pos, hashes, signed.note));
  }

  onApplicationShutdown(): void {
    for (const timer of this.pending.values()) clearTimeout(timer);
  }

  private async checkpoint(company: string): Promise<{ size: number; note: string } | undefined> {
    if (!this.signer) return undefined;
    const result = await this.signer.sign(company);
    if (result.kind === 'signed') return { size: result.checkpoint.size, note: result.note };
    this.log.error({ company, reason: result.reason }, 'the signer refused a checkpoint');
    return undefined;
  }
}

export const originOf = (company: string): string => `gauge-ledger/${company}`;
