import { execFileSync } from 'node:child_process'
import pg from 'pg'
import { createDatabase } from './postgres'

const MIGRATE =
  "import('./lib/data/server/open-server.ts').then(async (m) => (await m.openServer(process.argv[1])).close())"

/** The suites of the project "server" run on a PostgreSQL that somebody started for them. */
export const onServer = () => process.env.EMBERSLATE_ON_SERVER === '1'
export const testServer = () => {
  const url = process.env.EMBERSLATE_TEST_SERVER
  if (!url) throw new Error('EMBERSLATE_TEST_SERVER names no PostgreSQL. Run .ci/run, which starts one.')
  return url
}

/** Before the first suite: one database gets its tables, and all others are copies of it. */
export default async function setup() {
  const server = testServer()
  const url = await createDatabase(server)
  execFileSync(process.execPath, ['--conditions=react-server', '--import=tsx', '-e', MIGRATE, url])
  process.env.EMBERSLATE_TEMPLATE = new URL(url).pathname.slice(1)
  return () => removeCopies(process.env.EMBERSLATE_TEMPLATE ?? '')
}

export const copyOfMigrated = () => createDatabase(testServer(), process.env.EMBERSLATE_TEMPLATE)

/** The server may be somebody's own: nothing of a run stays on it. */
async function removeCopies(template: string) {
  const client = new pg.Client({ connectionString: testServer() })
  await client.connect()
  const { rows } = await client.query('SELECT datname AS name FROM pg_database WHERE starts_with(datname, $1)', [
    template,
  ])
  for (const { name } of rows) await client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`)
  await client.end()
}
