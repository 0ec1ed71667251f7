import 'server-only'

/** SQLSTATEs and codes of Node and Prisma that say that the server is not there now, and may be again. */
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
])
/** Seconds after which whoever met it may ask again. */
export const AGAIN_AFTER_S = 2
/** What the driver says without a code. */
const SAID =
  /connection terminated|timeout exceeded when trying to connect|server closed the connection|not queryable|client has encountered a connection error/i

/** Whether a fault means that the database server is away: nothing of this try was kept, and it may be tried again. */
export function isAway(fault: unknown): boolean {
  for (let one = fault, depth = 0; typeof one === 'object' && one !== null && depth < 6; depth++) {
    const { code, message, meta, cause, originalCode, driverAdapterError } = one as Record<string, unknown>
    if (AWAY.has(String(code)) || AWAY.has(String(originalCode)) || SAID.test(String(message))) return true
    if (Array.isArray((one as { errors?: unknown }).errors))
      return (one as { errors: unknown[] }).errors.some((inner) => isAway(inner))
    one = driverAdapterError ?? cause ?? (meta as { driverAdapterError?: unknown } | undefined)?.driverAdapterError
    if (one === undefined) one = meta
  }
  return false
}

const AGAIN_AFTER_MS = 300
export const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** A reading that met a server that was away is tried once more by itself. */
export async function readTwice<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read()
  } catch (fault) {
    if (!isAway(fault)) throw fault
    await wait(AGAIN_AFTER_MS)
    return read()
  }
}
