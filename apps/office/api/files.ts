// Putting a file away: the service answers with its digest, which is what the record keeps.

import { ask } from './client.js';

export interface StoredFile {
  readonly digest: string;
  readonly name: string;
}

export async function storeFile(file: File): Promise<StoredFile> {
  const { value } = await ask<StoredFile>('/files', {
    method: 'POST',
    raw: { bytes: file, type: file.type || 'application/octet-stream', name: file.name },
  });
  return { digest: value.digest, name: value.name };
}
