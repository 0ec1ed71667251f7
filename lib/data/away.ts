import 'server-only'
import { databaseUrl } from './env'

/** SQLSTATEs and codes of Node, Prisma and its adapter that say that the server is not there now, and may be again. */
const AWAY = new Set([
  // The server ends, has crashed, starts, or has no connection left.
  '57P01',
  '57P02',
  '57P03',
  '53300',
  '08000',
  '08001',
  '08003',
  '08004',
  '08006',
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ETIMEDOUT',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'EPIPE',
  'P1001',
  'P1002',
  'P1008',
  'P1017',
  'P2024',
  // A turn that found no connection, or whose connection broke.
  'P2028',
  'P2037',
  // What the adapter makes of a socket's fault.
  'DatabaseNotReachable',
  'ConnectionClosed',
  'SocketTimeout',
  'TooManyConnections',
])
/** Seconds after which whoever met it may ask again. */
export const AGAIN_AFTER_S = 2
/** A page or file of the embedded database is damaged: it is being rebuilt. */
const REBUILT = new Set(['XX001', 'XX002', '58P01'])
/** What the driver says without a code. */
const SAID =
  /database ended itself|PGlite is clos(?:ed|ing)|connection terminated|timeout exceeded when trying to connect|query read timeout|server closed the connection|not queryable|client has encountered a connection error/i

const saysAway = (code: string) => AWAY.has(code) || (REBUILT.has(code) && databaseUrl() === null)

/** Whether a fault means that the database server is away: nothing of this try was kept, and it may be tried again. */
export function isAway(fault: unknown, deepest = 6): boolean {
  if (typeof fault !== 'object' || fault === null || deepest === 0) return false
  const { code, originalCode, kind, message, cause, meta, driverAdapterError, errors } = fault as Record<
    string,
    unknown
  >
  if ([code, originalCode, kind].some((one) => saysAway(String(one))) || SAID.test(String(message))) return true
  // Each layer wraps the fault of the one beneath: Prisma in `meta`, its adapter in `cause`, Node in `errors`.
  const within = [cause, meta, driverAdapterError, ...(Array.isArray(errors) ? errors : [])]
  return within.some((one) => isAway(one, deepest - 1))
}

const AGAIN_AFTER_MS = 300
/** All that a page's browser is told of a fault: app/error.tsx has the sentence for it. */
const AWAY_DIGEST = 'database-away'
export const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** A reading that met a server that was away is tried once more by itself. */
export async function readTwice<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read()
  } catch (fault) {
    if (!isAway(fault)) throw fault
    await wait(AGAIN_AFTER_MS)
    return read().catch((again) => {
      throw isAway(again) ? Object.assign(again, { digest: AWAY_DIGEST }) : again
    })
  }
}
