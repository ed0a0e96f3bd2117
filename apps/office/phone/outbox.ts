// What was typed on the roof and is not sent yet: kept on this phone, sent later, once. Each piece
// keeps its own key, so that a lost answer never makes a second entry.

import type { CommandInput, JobView } from '#jobs/contract';
import { ask, problemFrom } from '../api/client.js';
import { sendCommand } from '../api/commands.js';

export interface Waiting {
  readonly key: string;
  readonly person: string;
  readonly job: string;
  readonly words: string;
  readonly typedAt: string;
  readonly command: CommandInput;
  /** The version of the job that was on the page when this was typed. */
  readonly version: number;
  /** Why the service refused it; a person then decides. */
  readonly refused?: string;
}

const STORE = 'outbox';
const listeners = new Set<() => void>();
let kept: { readonly text: string; readonly list: readonly Waiting[] } = { text: '', list: [] };

/** The same list until the store changes, so that a page may compare. */
export function outbox(): readonly Waiting[] {
  const text = localStorage.getItem(STORE) ?? '[]';
  if (text !== kept.text) kept = { text, list: JSON.parse(text) as Waiting[] };
  return kept.list;
}

export function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  addEventListener('storage', listener);
  return () => {
    listeners.delete(listener);
    removeEventListener('storage', listener);
  };
}

function keep(list: readonly Waiting[]): void {
  localStorage.setItem(STORE, JSON.stringify(list));
  for (const listener of listeners) listener();
}

export function post(piece: Omit<Waiting, 'key' | 'typedAt'>): void {
  keep([...outbox(), { ...piece, key: crypto.randomUUID(), typedAt: new Date().toISOString() }]);
  void sendAll(piece.person);
}

export const drop = (key: string): void => keep(outbox().filter((each) => each.key !== key));

/** Sends a refused piece once more, on the job as it stands now; what was typed stays as it is. */
export async function again(key: string, person: string): Promise<void> {
  const piece = outbox().find((each) => each.key === key);
  if (!piece) return;
  try {
    const { value } = await ask<JobView>(`/jobs/${piece.job}`);
    const { refused: _, ...rest } = piece;
    keep(outbox().map((each) => (each.key === key ? { ...rest, version: value.version } : each)));
    await sendAll(person);
  } catch {
    // No connection: it stays as it is, refused, until it is sent again.
  }
}

let sending = false;

/** Sends in order what this person typed; stops at the first piece that finds no connection. */
export async function sendAll(person: string): Promise<void> {
  if (sending) return;
  sending = true;
  try {
    for (;;) {
      const next = outbox().find((each) => each.person === person && each.refused === undefined);
      if (!next || !(await sendOne(next))) return;
    }
  } finally {
    sending = false;
  }
}

async function sendOne(piece: Waiting): Promise<boolean> {
  try {
    const { value } = await sendCommand(piece.job, piece.command, piece.version, piece.key);
    const later = outbox().filter((each) => each.key !== piece.key);
    keep(
      later.map((each) =>
        each.job === piece.job && each.version < value.version
          ? { ...each, version: value.version }
          : each,
      ),
    );
    return true;
  } catch (error) {
    const { status, detail, title, refusals, since } = problemFrom(error);
    if (status === 0 || status === 401 || status >= 500) return false;
    const changed = since?.map(({ words: what, by }) => `${what} (${by})`).join('; ');
    const words = changed
      ? `this surface was changed meanwhile: ${changed}. Look at it, then send again.`
      : refusals?.map((each) => each.words).join(' ') || (detail ?? title);
    keep(outbox().map((each) => (each.key === piece.key ? { ...each, refused: words } : each)));
    return true;
  }
}
