import 'server-only'
import { isAway } from '../away'

/** The oldest that its makers still kept up in 2025, and that the queue of jobs runs on. */
const OLDEST = 130_000

/** Where the database is, without its password. */
export function placeOf(url: string): string {
  const { host, pathname, searchParams } = new URL(url)
  return `The database ${decodeURIComponent(pathname.slice(1))} at ${host || searchParams.get('host') || 'localhost'}`
}

/** What a PostgreSQL of this version is refused with, if it is. */
export function tooOld(url: string, version: { readonly number: number; readonly said: string }): string | null {
  if (version.number >= OLDEST) return null
  return `${placeOf(url)} is on PostgreSQL ${version.said}; Emberslate needs ${OLDEST / 10_000} or newer.`
}

const WORDS: Readonly<Record<string, string>> = {
  '28P01': 'does not take this user and password. Correct them in DATABASE_URL.',
  '28000': 'does not let this user in. Correct DATABASE_URL, or allow it in pg_hba.conf.',
  '3D000': 'is not there. Make it (createdb), or correct its name in DATABASE_URL.',
  '42501': 'does not let this user make tables. Make it theirs: ALTER DATABASE … OWNER TO …',
}

/** Where the address was given. */
export type Named = 'DATABASE_URL' | '--to'

/** One sentence for whoever starts the app. */
export function whyNotOpened(url: string, fault: unknown, named: Named = 'DATABASE_URL'): string {
  const { code = '', message = String(fault) } = fault as { code?: string; message?: string }
  if (WORDS[code]) return `${placeOf(url)} ${WORDS[code].replaceAll('DATABASE_URL', named)}`
  if (!isAway(fault)) return message
  const or = named === 'DATABASE_URL' ? '; without DATABASE_URL everything is kept in a folder' : ''
  return `${placeOf(url)} does not answer (${code || message}). Start PostgreSQL there, or correct ${named}${or}.`
}
