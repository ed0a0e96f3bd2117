// Where Prisma finds the schema and the migrations; the address is only needed to deploy them.

import { defineConfig } from 'prisma/config';

const url = process.env['DATABASE_URL'];

export default defineConfig({
  schema: '../prisma/schema.prisma',
  migrations: { path: '../prisma/migrations' },
  ...(url === undefined ? {} : { datasource: { url } }),
});
