// Previews of drafted editions, one at a time in a worker thread; the next ones wait. Kept while the
// service runs, and only so many of each company: a preview is worked out again at any time.

import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { ANSWERS, type Counts, type ImpactScope } from '#jobs/contract';
import type { Edition } from '#rules';
import { Settings } from '../data/settings.js';
import { Problem } from '../problems.js';
import { startThread, type Thread } from './preview-thread.js';
import type { Heard } from './preview-worker.js';
import type { Going, ImpactRow } from './run-preview.js';

export const PREVIEW_STATES = ['waiting', 'running', 'done', 'cancelled', 'failed'] as const;
export type PreviewState = (typeof PREVIEW_STATES)[number];

export interface PreviewAsked {
  readonly company: string;
  readonly draft: string;
  /** The draft as it was saved then. */
  readonly draftVersion: number;
  readonly edition: Edition;
  readonly scope: ImpactScope;
}
export interface KeptPreview extends PreviewAsked, Going {
  readonly id: string;
  readonly state: PreviewState;
  readonly askedAt: string;
  readonly position: number;
  readonly rows: readonly ImpactRow[];
  readonly unlisted: number;
  readonly failure: string | null;
}

const KEPT = 8;
const MOST_WAITING = 20;
const NOTHING = Object.fromEntries(ANSWERS.map((each) => [each, 0])) as Counts;

@Injectable()
export class Previews implements OnApplicationShutdown {
  private readonly kept = new Map<string, KeptPreview>();
  private running: { readonly id: string; readonly thread: Thread } | undefined;

  constructor(private readonly settings: Settings) {}

  /** The same draft in the same scope is not begun twice while it runs. */
  start(asked: PreviewAsked): KeptPreview {
    const unfinished = [...this.kept.values()].filter(isUnfinished);
    const same = unfinished.find(
      ({ company, draft, draftVersion, scope }) =>
        company === asked.company &&
        draft === asked.draft &&
        draftVersion === asked.draftVersion &&
        scope === asked.scope,
    );
    if (same) return same;
    if (unfinished.length >= MOST_WAITING) {
      throw new Problem('busy', { detail: 'Too many previews wait already.', retryAfter: 30 });
    }
    const kept: KeptPreview = {
      ...asked,
      id: uuid(),
      state: 'waiting',
      askedAt: new Date().toISOString(),
      done: 0,
      counts: NOTHING,
      read: 0,
      of: 0,
      position: 0,
      rows: [],
      unlisted: 0,
      failure: null,
    };
    this.kept.set(kept.id, kept);
    this.forgetOld(asked.company);
    this.next();
    return this.kept.get(kept.id) ?? kept;
  }

  find(company: string, id: string): KeptPreview | undefined {
    const kept = this.kept.get(id);
    return kept?.company === company ? kept : undefined;
  }

  ofDraft(company: string, draft: string): readonly KeptPreview[] {
    return [...this.kept.values()].filter(
      (each) => each.company === company && each.draft === draft,
    );
  }

  /** Does nothing to one that is finished. */
  cancel(company: string, id: string): KeptPreview | undefined {
    const kept = this.find(company, id);
    if (kept && isUnfinished(kept)) this.finish(id, { state: 'cancelled' });
    return this.find(company, id);
  }

  async onApplicationShutdown(): Promise<void> {
    const running = this.running;
    this.kept.clear();
    this.running = undefined;
    await running?.thread.stop();
  }

  private next(): void {
    const waiting = [...this.kept.values()].find(({ state }) => state === 'waiting');
    if (this.running || !waiting) return;
    const { id, company, scope, edition } = waiting;
    this.put(id, { state: 'running' });
    const { serviceUrl } = this.settings;
    const hear = (heard: Heard): void => this.hear(id, heard);
    this.running = { id, thread: startThread({ serviceUrl, company, scope, edition }, hear) };
  }

  private hear(id: string, { is, ...heard }: Heard): void {
    if (this.running?.id !== id) return;
    if (is === 'going') this.put(id, heard as Partial<KeptPreview>);
    else if (is === 'done') this.finish(id, { ...heard, state: 'done' });
    else this.finish(id, { state: 'failed', failure: (heard as { words: string }).words });
  }

  private finish(id: string, change: Partial<KeptPreview>): void {
    this.put(id, change);
    if (this.running?.id === id) {
      const { thread } = this.running;
      this.running = undefined;
      void thread.stop();
    }
    this.next();
  }

  private put(id: string, change: Partial<KeptPreview>): void {
    const kept = this.kept.get(id);
    if (kept) this.kept.set(id, { ...kept, ...change });
  }

  private forgetOld(company: string): void {
    const own = [...this.kept.values()].filter((each) => each.company === company);
    const finished = own.filter((each) => !isUnfinished(each));
    for (const { id } of finished.slice(0, Math.max(0, own.length - KEPT))) this.kept.delete(id);
  }
}

const isUnfinished = ({ state }: KeptPreview): boolean =>
  state === 'waiting' || state === 'running';
