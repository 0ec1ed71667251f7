import 'server-only'
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils'
import { loadSchemaEngine } from '../../prisma/load-schema-engine.mjs'

const read = (file: string) => readFileSync(/* turbopackIgnore: true */ file, 'utf8')

function migrationsIn(folder: string) {
  const names = readdirSync(/* turbopackIgnore: true */ folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
  return names.map((name) => ({
    path: name,
    migrationFile: {
      path: 'migration.sql',
      content: { tag: 'ok' as const, value: read(path.join(folder, name, 'migration.sql')) },
    },
  }))
}

/** What `prisma migrate deploy` does, in process: same engine, same table, same checksums. Returns the names applied. */
export async function applyMigrations(
  adapter: SqlMigrationAwareDriverAdapterFactory,
  folder = path.join(/* turbopackIgnore: true */ process.cwd(), 'prisma', 'migrations'),
): Promise<readonly string[]> {
  const SchemaEngine = await loadSchemaEngine()
  const engine = await SchemaEngine.new(
    { datamodels: undefined },
    () => {},
    bindMigrationAwareSqlAdapterFactory(adapter),
  )
  try {
    const { appliedMigrationNames } = await engine.applyMigrations({
      filters: { externalTables: [], externalEnums: [] },
      migrationsList: {
        baseDir: folder,
        lockfile: { path: 'migration_lock.toml', content: read(path.join(folder, 'migration_lock.toml')) },
        shadowDbInitScript: '',
        migrationDirectories: migrationsIn(folder),
      },
    })
    return appliedMigrationNames
  } finally {
    engine.free()
  }
}
