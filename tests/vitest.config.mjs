import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const root = fileURLToPath(new URL('..', import.meta.url))
/** Suites of pure code share a process, and so load the model once; what they hold between tests is memory of pure functions. */
const PURE = ['unit', 'laws', 'reference'].map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`)

const WEB = ['tests/web/**/*.test.ts']
/** What only a PostgreSQL can show; tests/data/folder is what only a folder can. */
const ON_SERVER = 'tests/data/server/*.test.ts'
/** initdb takes 5 s of a core each time and makes the same each time. */
const PREPARED = { resolve: { alias: { '@electric-sql/pglite': path.join(root, 'tests/prepared-pglite.ts') } } }

/** With a PostgreSQL to run on, the suite of the data runs on it once more. */
const SERVER = process.env.EMBERSLATE_TEST_SERVER
  ? [
      {
        extends: true,
        test: {
          name: 'server',
          // Said for its suites alone: the data suite runs beside them and is about a folder.
          env: { EMBERSLATE_ON_SERVER: '1' },
          include: ['tests/data/*.test.ts', ON_SERVER],
          globalSetup: ['tests/empty-database.ts', 'tests/migrated-database.ts'],
        },
      },
    ]
  : []

export default defineConfig({
  root,
  resolve: {
    alias: { '@': root.replace(/\/$/, ''), 'server-only': path.join(root, 'node_modules/server-only/empty.js') },
  },
  test: {
    testTimeout: 30_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      {
        extends: true,
        test: {
          name: 'web',
          include: WEB,
          globalSetup: ['tests/empty-database.ts', 'tests/web/one-app.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'data',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [...PURE, ...WEB, ON_SERVER],
          globalSetup: 'tests/empty-database.ts',
        },
        ...PREPARED,
      },
      ...SERVER,
    ],
  },
})
