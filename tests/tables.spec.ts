// Every model of the Prisma schema can be read in full: its columns stand in the migrations.

import { expect, test } from '@jest/globals';
import { Prisma } from '#prisma';
import { Companies } from '../apps/api/data/companies.js';
import { withService } from './service.js';

const running = withService();

test('every column of every model is there', async () => {
  const { prisma } = running.service.get(Companies).of('nobody');
  const models = Object.values(Prisma.ModelName);
  expect(models).toEqual(
    expect.arrayContaining(['Company', 'Person', 'JobRow', 'UnsignedSurface']),
  );
  for (const model of models) {
    const key = model.charAt(0).toLowerCase() + model.slice(1);
    const table = (prisma as unknown as Record<string, { findMany(): Promise<unknown[]> }>)[key];
    expect({ model, rows: await table?.findMany() }).toEqual({ model, rows: [] });
  }
});
