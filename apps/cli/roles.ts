// The service's role and database on a server, made by its owner where they are missing.

import type pg from 'pg';

/** All that the service may do is granted to this one; the migrations name no other. */
const GROUP = 'gauge_service';
const LOGIN = 'gauge_app';

/** Makes the group and a login in it with this password. */
export async function makeRoles(owner: pg.Client, password: string): Promise<void> {
  const has = async (name: string) =>
    (await owner.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [name])).rowCount === 1;
  if (!(await has(GROUP))) await owner.query(`CREATE ROLE ${GROUP} NOLOGIN`);
  if (!(await has(LOGIN))) await owner.query(`CREATE ROLE ${LOGIN} LOGIN IN ROLE ${GROUP}`);
  await owner.query(`ALTER ROLE ${LOGIN} PASSWORD ${owner.escapeLiteral(password)}`);
}

export async function makeDatabase(owner: pg.Client, name: string): Promise<void> {
  const found = await owner.query('SELECT 1 FROM pg_database WHERE datname = $1', [name]);
  if (found.rowCount === 0) await owner.query(`CREATE DATABASE ${owner.escapeIdentifier(name)}`);
}

/** The owner's address with the service's login in it. */
export function serviceUrl(ownerUrl: string, password: string): string {
  const url = new URL(ownerUrl);
  url.username = LOGIN;
  url.password = password;
  return url.href;
}
