import 'server-only'
import { sayFault } from '../say'
import { requireRoom } from './disk-room'

/** So much to be read again after a power cut is still a matter of a second or two. [estimate] */
const MOST_BYTES = 64_000_000
const LOOK_MS = 60_000
const SINCE = 'SELECT pg_wal_lsn_diff(pg_current_wal_lsn(), redo_lsn)::float8 AS bytes FROM pg_control_checkpoint()'

interface Asked {
  query<T>(statement: string): Promise<{ readonly rows: readonly T[] }>
}

/** The embedded database never does this by itself: its write-ahead log would grow for as long as the app runs. */
export async function trimWal(folder: string, database: Asked, most = MOST_BYTES): Promise<void> {
  const { rows } = await database.query<{ bytes: number }>(SINCE)
  if ((rows[0]?.bytes ?? 0) < most) return
  // It writes before it makes room, and must not be cut off.
  await requireRoom(folder)
  await database.query('CHECKPOINT')
}

/** Looks each minute, until the returned function is called. */
export function keepTrimmed(folder: string, database: Asked): () => void {
  const look = () => trimWal(folder, database).catch((fault) => sayFault('wal-not-trimmed', fault))
  const timer = setInterval(look, LOOK_MS)
  timer.unref()
  return () => clearInterval(timer)
}
