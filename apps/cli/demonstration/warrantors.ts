// Who stands behind the warranty documents of the demonstration, all invented.

import type { Catalogue } from '#jobs/contract';

export const WARRANTORS: NonNullable<Catalogue['warrantors']> = [
  {
    name: 'Example Coil Coating (invented)',
    address: 'Claims, 100 Example Mill Road, Sampleton OH',
    documents: [
      { kind: 'paint', version: 'edition 4', registration_days: 60, full_years: 10 },
      { kind: 'substrate', version: 'edition 2', registration_days: 60 },
    ],
  },
  {
    name: 'Example Panel Works (invented)',
    address: 'Warranty office, 7 Example Works Street, Milltown MI',
    documents: [{ kind: 'weathertightness', version: 'edition 1', registration_days: 30 }],
  },
  {
    name: 'Example Metal Roofing (demonstration)',
    address: '12 Sample Street, Sampleton OH',
    documents: [{ kind: 'workmanship', version: 'edition 1' }],
  },
];
