// Checkpoints of each company's log, signed with the installation's key, and proofs under them.
// Without a folder for the key nothing is signed, and papers carry no proof.

import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import {
  createSigner,
  formatProof,
  makeBundle,
  openKeyRing,
  type BundleRequest,
  type BundleResult,
  type KeyRing,
  type NoteVerifier,
  type SignedBefore,
  type Signer,
} from '#ledger';
import { Log } from '../http/log.js';
import { Ledgers } from './ledgers.js';
import { Settings } from './settings.js';

const SOON_MS = 250;

@Injectable()
export class Signing implements OnApplicationShutdown {
  private readonly signer: Signer | undefined;
  private readonly keys: KeyRing | undefined;
  private readonly pending = new Map<string, NodeJS.Timeout>();
  private readonly listeners: ((company: string) => void)[] = [];

  constructor(
    settings: Settings,
    private readonly ledgers: Ledgers,
    private readonly log: Log,
  ) {
    const { keysFolder } = settings;
    if (keysFolder === undefined) return;
    mkdirSync(keysFolder, { recursive: true, mode: 0o700 });
    this.keys = openKeyRing(path.join(keysFolder, 'signing-key.json'));
    this.signer = createSigner({
      ledger: ledgers.ledger,
      folder: keysFolder,
      origin: originOf,
      keys: this.keys,
    });
  }

  /** Calls back after a checkpoint was signed. */
  onSigned(listener: (company: string) => void): void {
    this.listeners.push(listener);
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

  /** What was signed of this log before; nothing where nothing is ever signed. */
  async before(company: string): Promise<SignedBefore> {
    return (await this.signer?.signed(company)) ?? { outside: undefined, kept: [], faults: [] };
  }

  /** Undefined where nothing is ever signed: evidence without a signature would show nothing. */
  async bundle(request: Omit<BundleRequest, 'origin'>): Promise<BundleResult | undefined> {
    const { signer, keys } = this;
    if (!signer || !keys) return undefined;
    const { ledger } = this.ledgers;
    const tools = { ledger, signer, keys };
    const made = await makeBundle(tools, { ...request, origin: originOf(request.log) });
    if (made.kind === 'made') this.tell(request.log);
    return made;
  }

  /** The key in use first, then those before it; none where nothing is signed. */
  verifiers(company: string): readonly NoteVerifier[] {
    return this.keys?.verifiers(originOf(company)) ?? [];
  }

  onApplicationShutdown(): void {
    for (const timer of this.pending.values()) clearTimeout(timer);
  }

  /** Of the log as it is now; undefined where nothing is signed, or the signer refused. */
  async checkpoint(company: string): Promise<{ size: number; note: string } | undefined> {
    if (!this.signer) return undefined;
    const result = await this.signer.sign(company);
    if (result.kind === 'signed') {
      this.tell(company);
      return { size: result.checkpoint.size, note: result.note };
    }
    this.log.error({ company, reason: result.reason }, 'the signer refused a checkpoint');
    return undefined;
  }

  private tell(company: string): void {
    for (const listener of this.listeners) listener(company);
  }
}

export const originOf = (company: string): string => `gauge-ledger/${company}`;
