// Housekeeping of a ledger in PostgreSQL: what start checks, and what goes after its time.

import type pg from 'pg';
import type { CompanyPool } from './postgres-pool.js';

/** Reasons not to serve with this role, as sentences: walls would not hold. Empty: fit to serve. */
export async function serviceRoleFaults(pool: pg.Pool): Promise<string[]> {
  const { rows } = await pool.query<RoleRow>(
    `SELECT current_user AS name, rolsuper AS superuser, rolbypassrls AS bypasses,
      coalesce((SELECT bool_or(pg_has_role(current_user, relowner, 'MEMBER')) FROM pg_class
        WHERE relnamespace = to_regnamespace('ledger')), false) AS owner,
      coalesce(has_schema_privilege(to_regnamespace('ledger'), 'USAGE'), false) AS granted
    FROM pg_roles WHERE rolname = current_user`,
  );
  const role = rows[0] as RoleRow;
  const says = (wrong: boolean, sentence: string) => (wrong ? [`${role.name} ${sentence}`] : []);
  return [
    ...says(role.superuser, 'is a superuser: company walls do not hold for it.'),
    ...says(role.bypasses, 'has BYPASSRLS: company walls do not hold for it.'),
    ...says(role.owner, 'owns the ledger’s tables: company walls do not hold for it.'),
    ...says(!role.granted, 'may not use the ledger: grant it the role gauge_service.'),
  ];
}

interface RoleRow {
  readonly name: string;
  readonly superuser: boolean;
  readonly bypasses: boolean;
  readonly owner: boolean;
  readonly granted: boolean;
}

const COMMAND_DAYS = 90;

/** Forgets which commands were done, after 90 days; gives how many. Their events stay. */
export async function forgetOldCommands(pool: CompanyPool, log: string): Promise<number> {
  const result = await pool.use(log, (client) =>
    client.query(
      `DELETE FROM ledger.command
       WHERE log_id = $1 AND recorded_at < now() - make_interval(days => $2)`,
      [log, COMMAND_DAYS],
    ),
  );
  return result.rowCount ?? 0;
}
