// What the administrator's pages read besides people: the company, signing keys, noted backups.

import { queryOptions } from '@tanstack/react-query';
import { ask } from './client.js';
import type { SigningKey } from './proof.js';

export interface Company {
  readonly name: string;
  readonly address: string;
  readonly phone: string;
  readonly since: string;
}

export interface SigningKeys {
  readonly signs: boolean;
  readonly keys: readonly SigningKey[];
  readonly changes: readonly {
    readonly pos: number;
    readonly at: string;
    readonly by: string;
    readonly from: string;
    readonly to: string;
  }[];
  readonly checkpoint: { readonly size: number; readonly note: string } | null;
}

export interface BackupNote {
  readonly what: 'made' | 'restored-on-trial';
  readonly on: string;
  readonly where: string;
  readonly at: string;
  readonly by: string;
  readonly pos: number;
}

const reading = <T>(name: string, path: string) =>
  queryOptions({
    queryKey: [name],
    queryFn: async ({ signal }) => (await ask<T>(path, { signal })).value,
  });

export const companyQuery = reading<Company>('company', '/company');
export const keysQuery = reading<SigningKeys>('keys', '/keys');
export const backupsQuery = reading<{ readonly noted: readonly BackupNote[] }>(
  'backups',
  '/backups',
);
