// Connections that work for one company: row-level security asks each connection which one.

import pg from 'pg';

export interface CompanyPool {
  /** Runs the work on a connection of this company's; its transaction, if it opens one, is its own. */
  use<T>(company: string, work: (client: pg.PoolClient) => Promise<T>): Promise<T>;
  /** The same in a transaction, rolled back when the work throws. */
  transaction<T>(company: string, work: (client: pg.PoolClient) => Promise<T>): Promise<T>;
}

const nothing = () => undefined;

/** A pool whose connections may end at any moment: whoever waits for an answer is told, nobody else. */
export function openPool(config: pg.PoolConfig): pg.Pool {
  const pool = new pg.Pool(config);
  pool.on('error', nothing);
  // Also while it is lent and nobody waits for an answer on it.
  pool.on('connect', (client) => client.on('error', nothing));
  return pool;
}

/** The same for one connection; the caller connects and ends it. */
export function newClient(config: pg.ClientConfig): pg.Client {
  const client = new pg.Client(config);
  client.on('error', nothing);
  return client;
}

/**
 * A pool of the service role that sends without waiting for the answer before, and keeps what it opened:
 * a timer at each use would cost a read a twentieth. The caller ends it.
 */
export function openServicePool(connectionString: string, max: number, name = 'ledger'): pg.Pool {
  const config = { connectionString, max, application_name: name };
  return openPool({ ...config, pipeline: true, idleTimeoutMillis: 0 });
}

/** The pool must serve nobody else: a connection remembers its company between uses. */
export function companyPool(pool: pg.Pool): CompanyPool {
  const companies = new WeakMap<pg.PoolClient, string>();
  const use: CompanyPool['use'] = async (company, work) => {
    const client = await pool.connect();
    let fault: unknown;
    try {
      if (companies.get(client) !== company) {
        companies.delete(client);
        await client.query("SELECT set_config('gauge.company', $1, false)", [company]);
        companies.set(client, company);
      }
      return await work(client);
    } catch (error) {
      fault = error;
      throw error;
    } finally {
      client.release(isConnectionFault(fault));
    }
  };
  return {
    use,
    transaction: (company, work) =>
      use(company, async (client) => {
        // Goes out with the work's first statement, which fails where this one fails.
        const begun = client.query('BEGIN');
        begun.catch(nothing);
        try {
          const result = await work(client);
          await begun;
          await client.query('COMMIT');
          return result;
        } catch (error) {
          await client.query('ROLLBACK').catch(() => undefined);
          throw error;
        }
      }),
  };
}

/** A server's own refusal carries a five-character code and leaves the connection fit for use. */
function isConnectionFault(fault: unknown): boolean {
  if (fault === undefined) return false;
  const code = (fault as { code?: unknown }).code;
  return typeof code !== 'string' || !/^[0-9A-Z]{5}$/.test(code) || code.startsWith('57P');
}
