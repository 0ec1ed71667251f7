import pg from 'pg'
import { migrationNames } from '../../data/migrate'
import { clockAfter, clockAgainst } from './clock'
import { broken, type Finding, look, ok } from './finding'

const ABOUT = 'PostgreSQL'
const CONNECT_MS = 5000
const HEARD_MS = 2000
/** What one process takes: its pool of 10 (lib/data/server/open-server.ts), its ear, and one more while it starts. */
const EACH_PROCESS = 12

/** Where it is, without user and password. */
const placeOf = (url: string) => {
  const { host, pathname } = new URL(url)
  return `${host || 'this computer'}${decodeURIComponent(pathname)}`
}

const WHY: Readonly<Record<string, readonly [string, string]>> = {
  ECONNREFUSED: ['nothing listens there', 'Start PostgreSQL, or correct host and port in DATABASE_URL.'],
  ENOTFOUND: ['there is no computer of that name', 'Correct the host in DATABASE_URL.'],
  ETIMEDOUT: ['it does not answer', 'See whether a firewall stands between.'],
  '28P01': ['it does not take the password', 'Correct user and password in DATABASE_URL.'],
  '28000': ['it does not let this user in', 'Let the user in by pg_hba.conf, or correct DATABASE_URL.'],
  '3D000': ['there is no such database', 'Make it: createdb, by the name in DATABASE_URL.'],
  '57P03': ['it is starting or stopping', 'Try again in a minute.'],
  '53300': ['it has no connection left', 'Raise max_connections, or run fewer processes.'],
}

export async function postgresFindings(url: string): Promise<readonly Finding[]> {
  const client = new pg.Client({
    connectionString: url,
    connectionTimeoutMillis: CONNECT_MS,
    query_timeout: CONNECT_MS,
  })
  client.on('error', () => undefined)
  try {
    await client.connect()
  } catch (fault) {
    const { code = '' } = fault as { code?: string }
    const [why, todo] = WHY[code] ?? [
      `it does not answer${code && ` (${code})`}`,
      'See whether it runs, and whether DATABASE_URL is right.',
    ]
    return [broken(ABOUT, `${placeOf(url)}: ${why}.`, todo)]
  }
  try {
    return [
      await versionFinding(client, url),
      await migrationsFinding(client),
      await listenFinding(client),
      await roomFinding(client),
      ...(await clockFindings(client)),
    ]
  } finally {
    await client.end().catch(() => undefined)
  }
}

const one = async (client: pg.Client, sql: string) => (await client.query(sql)).rows[0] as Record<string, string>

async function versionFinding(client: pg.Client, url: string): Promise<Finding> {
  const { server_version: version = '' } = await one(client, 'SHOW server_version')
  const sentence = `Version ${version.split(' ')[0]} at ${placeOf(url)} answers.`
  return Number.parseInt(version, 10) >= 13
    ? ok(ABOUT, sentence)
    : broken(ABOUT, sentence, 'Emberslate needs version 13 or newer.')
}

async function migrationsFinding(client: pg.Client): Promise<Finding> {
  const { there } = await one(client, `SELECT to_regclass('"_prisma_migrations"') IS NOT NULL AS there`)
  if (!there) return ok('Tables', 'There are none yet: the first npm start makes them.')
  const { rows } = await client.query(
    'SELECT migration_name AS name FROM "_prisma_migrations" WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL',
  )
  const done = rows.map(({ name }) => name as string)
  const ours = migrationNames()
  if (done.some((name) => !ours.includes(name)))
    return broken('Tables', 'A newer Emberslate has changed them.', 'Start the newer one everywhere.')
  const due = ours.filter((name) => !done.includes(name)).length
  if (due === 0) return ok('Tables', 'They are up to date.')
  return look(
    'Tables',
    `Changes that are due: ${due}.`,
    'The next npm start makes them. pg_dump before it, to be able to go back.',
  )
}

/** A pooler that hands connections round between statements swallows notices. */
async function listenFinding(client: pg.Client): Promise<Finding> {
  const channel = `emberslate_doctor_${process.pid}`
  const heard = new Promise<boolean>((resolve) => {
    const timer = setTimeout(() => resolve(false), HEARD_MS)
    client.once('notification', () => {
      clearTimeout(timer)
      resolve(true)
    })
  })
  await client.query(`LISTEN ${channel}`)
  await client.query('SELECT pg_notify($1, $2)', [channel, 'doctor'])
  if (await heard) return ok('Notices', 'LISTEN and NOTIFY work.')
  return broken(
    'Notices',
    'A notice did not come back: processes would not hear each other.',
    'Give DATABASE_URL without a pooler, or set the pooler to session mode.',
  )
}

async function roomFinding(client: pg.Client): Promise<Finding> {
  const { most, used } = await one(
    client,
    `SELECT current_setting('max_connections')::int AS most, (SELECT count(*)::int FROM pg_stat_activity WHERE backend_type = 'client backend') AS used`,
  )
  const free = Number(most) - Number(used)
  const words = `${used} of ${most} connections are taken; a process takes up to ${EACH_PROCESS}.`
  if (free >= EACH_PROCESS) return ok('Connections', words)
  return look('Connections', words, 'Raise max_connections before another process is started.')
}

async function clockFindings(client: pg.Client): Promise<readonly Finding[]> {
  const before = Date.now()
  const { now } = await one(client, 'SELECT extract(epoch FROM clock_timestamp()) * 1000 AS now')
  const middle = (before + Date.now()) / 2
  const { there } = await one(client, `SELECT to_regclass('"LogLine"') IS NOT NULL AS there`)
  const { last } = there
    ? await one(client, 'SELECT extract(epoch FROM max(received)) * 1000 AS last FROM "LogLine"')
    : { last: null }
  return [clockAgainst('PostgreSQL', Number(now), middle), clockAfter(last === null ? null : Number(last), middle)]
}
