// Signing keys in public form: the one in use and those before it.

import type { SigningKey } from '../api/proof.js';
import { PlainTable } from '../parts/table.js';

export const Keys = ({ keys }: { readonly keys: readonly SigningKey[] }) => (
  <PlainTable
    caption="Signing keys"
    note="Public keys; a change of key is an entry of the record, signed by both"
    columns={[
      'Key',
      'Standing',
      'Fingerprint, SHA-256 of the public key',
      'To give to the checker',
    ]}
    rows={keys.map(({ id, in_use, fingerprint, text }) => [
      <span key="id" className="digest">
        {id}
      </span>,
      in_use ? 'In use' : 'Former',
      <span key="print" className="digest">
        {fingerprint}
      </span>,
      <span key="text" className="digest">
        {text}
      </span>,
    ])}
  />
);
