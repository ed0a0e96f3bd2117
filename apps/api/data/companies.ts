// What the service keeps open for each company: its tables behind the walls, and its log. Every
// connection of a company's pool knows its company from its first moment.

import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { PrismaPg } from '@prisma/adapter-pg';
import type pg from 'pg';
import { openPool } from '#ledger';
import { PrismaClient } from '#prisma';
import { Settings } from './settings.js';

export interface Tables {
  readonly prisma: PrismaClient;
  readonly pool: pg.Pool;
}

@Injectable()
export class Companies implements OnApplicationShutdown {
  private readonly open = new Map<string, Tables>();

  constructor(private readonly settings: Settings) {}

  of(company: string): Tables {
    let tables = this.open.get(company);
    if (!tables) {
      tables = connect(this.settings.serviceUrl, company);
      this.open.set(company, tables);
    }
    return tables;
  }

  async onApplicationShutdown(): Promise<void> {
    await Promise.all(
      [...this.open.values()].map(async ({ prisma, pool }) => {
        await prisma.$disconnect();
        await pool.end();
      }),
    );
  }
}

function connect(serviceUrl: string, company: string): Tables {
  if (!/^[a-z0-9-]{1,64}$/.test(company))
    throw new Error('a company id is letters, digits, dashes');
  const pool = openPool({
    connectionString: serviceUrl,
    max: 8,
    idleTimeoutMillis: 60_000,
    application_name: 'gauge-service',
    options: `-c gauge.company=${company}`,
  });
  return { pool, prisma: new PrismaClient({ adapter: new PrismaPg(pool) }) };
}
