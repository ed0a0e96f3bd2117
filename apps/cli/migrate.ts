// Applies prisma/migrations with Prisma's own engine, so that the database looks exactly as after
// `prisma migrate deploy`.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type pg from 'pg';
import { openPool } from '#ledger';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import * as engine from '@prisma/schema-engine-wasm/schema_engine_bg';

/** Applies what is missing, in order; gives the names of the migrations applied now. */
export async function migrate(ownerUrl: string): Promise<readonly string[]> {
  loadEngine();
  const pool = openPool({ connectionString: ownerUrl, max: 2 });
  const adapters = bindMigrationAwareSqlAdapterFactory(wholeScripts(new PrismaPg(pool), pool));
  const schema = await engine.SchemaEngine.new(
    { datamodels: undefined },
    () => undefined,
    adapters,
  );
  try {
    const applied = await schema.applyMigrations({
      migrationsList: readMigrations(migrationsFolder()),
      filters: { externalTables: [], externalEnums: [] },
    });
    return applied.appliedMigrationNames;
  } finally {
    schema.free();
    await pool.end();
  }
}

/** The adapter cuts a script at every semicolon, also inside a function; a migration runs whole. */
function wholeScripts(adapters: PrismaPg, pool: pg.Pool): PrismaPg {
  const connect = adapters.connect.bind(adapters);
  adapters.connect = async () => {
    const adapter = await connect();
    adapter.executeScript = async (script) => {
      await pool.query(script);
    };
    return adapter;
  };
  return adapters;
}

let loaded = false;

function loadEngine(): void {
  if (loaded) return;
  const entry = createRequire(import.meta.url).resolve(
    '@prisma/schema-engine-wasm/schema_engine_bg',
  );
  const bytes = readFileSync(entry.replace(/\.js$/, '.wasm'));
  const imports = { './schema_engine_bg.js': { ...(engine as object), ...quietTimers() } };
  const instance = new WebAssembly.Instance(new WebAssembly.Module(bytes), imports);
  const internals = engine as unknown as { __wbg_set_wasm(exports: unknown): void };
  internals.__wbg_set_wasm(instance.exports);
  (instance.exports['__wbindgen_start'] as () => void)();
  loaded = true;
}

/** The engine never clears its ten-second timers; they must not keep the process from ending. */
function quietTimers(): WebAssembly.ModuleImports {
  const names = Object.keys(engine).filter((name) => name.startsWith('__wbg_setTimeout_'));
  const start = (then: () => void, ms: number) => setTimeout(then, ms).unref();
  return Object.fromEntries(names.map((name) => [name, start]));
}

function readMigrations(baseDir: string) {
  const lockfile = path.join(baseDir, 'migration_lock.toml');
  return {
    baseDir,
    lockfile: {
      path: 'migration_lock.toml',
      content: existsSync(lockfile) ? readFileSync(lockfile, 'utf8') : null,
    },
    shadowDbInitScript: '',
    migrationDirectories: readdirSync(baseDir, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name)
      .sort()
      .map((name) => ({
        path: name,
        migrationFile: {
          path: 'migration.sql',
          content: {
            tag: 'ok' as const,
            value: readFileSync(path.join(baseDir, name, 'migration.sql'), 'utf8'),
          },
        },
      })),
  };
}

/** prisma/migrations of the product, whether this file runs from its source or from the build. */
function migrationsFolder(): string {
  let folder = path.dirname(fileURLToPath(import.meta.url));
  while (!existsSync(path.join(folder, 'prisma', 'migrations'))) {
    const up = path.dirname(folder);
    if (up === folder) throw new Error('The folder prisma/migrations is missing.');
    folder = up;
  }
  return path.join(folder, 'prisma', 'migrations');
}
