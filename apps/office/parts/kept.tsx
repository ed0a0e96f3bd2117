// Says that what was typed earlier is still here, with a way to throw it away.

import type { Draft } from './draft.js';

export function Kept({ draft }: { readonly draft: Pick<Draft<object>, 'restored' | 'clear'> }) {
  if (!draft.restored) return null;
  return (
    <div className="notice row ends">
      <p>What you typed earlier is still here. It is not saved yet.</p>
      <button type="button" onClick={draft.clear}>
        Throw it away
      </button>
    </div>
  );
}
