// A change of the signing key is itself an entry, signed by the key that goes and the one that comes.

import type { By, Ledger } from './ledger.js';
import { signNote } from './note.js';
import type { NoteSigner } from './note.js';

export const KEY_STREAM = 'ledger-keys';
export const KEY_CHANGED = 'ledger-key-changed/1';

/** What both keys sign when one takes the other's place. */
export function keyChangeText(origin: string, from: string, to: string): string {
  return `The signing key of this log changes.\n${origin}\n${from}\n${to}\n`;
}

/** The key that the record of this log names as the one in use; none where it was never changed. */
export async function keyNamed(ledger: Ledger, log: string): Promise<string | undefined> {
  const changes = await ledger.readStream(log, KEY_STREAM);
  const last = changes.filter(({ type }) => type === KEY_CHANGED).at(-1);
  return last && (last.data as { readonly to: string }).to;
}

/** Appends the entry, once however often it is called; the new key is not in use yet. */
export async function appendKeyChange(
  ledger: Ledger,
  log: string,
  pair: readonly [NoteSigner, NoteSigner],
  by: By,
): Promise<void> {
  const [from, to] = pair.map(({ verifier }) => verifier.text) as [string, string];
  if ((await keyNamed(ledger, log)) === to) return;
  const note = signNote(keyChangeText(pair[0].verifier.name, from, to), pair);
  const events = [{ type: KEY_CHANGED, data: { from, to, note } }];
  for (let expectedVersion = 0; ;) {
    const result = await ledger.append({
      log,
      command: { id: `key change to ${to}`, digest: to },
      by,
      streams: [{ stream: KEY_STREAM, expectedVersion, events }],
    });
    if (result.kind !== 'wrong-version') {
      if (result.kind === 'appended' || result.kind === 'repeated') return;
      throw new Error(`The key change of ${log} was answered with ${result.kind}.`);
    }
    expectedVersion = result.actual;
  }
}
