import type { PGlite } from '@electric-sql/pglite'

/** The engine has ended itself in the middle of a statement; this instance of it must not be asked again. */
export class DatabasePanic extends Error {
  constructor(why: unknown) {
    super(`the database ended itself: ${inWords(why)}`)
    this.name = 'DatabasePanic'
  }
}
/** A page or a file of the database is not as it was written. */
export class DatabaseDamaged extends Error {
  constructor(why: unknown) {
    super(inWords(why))
    this.name = 'DatabaseDamaged'
  }
}
const inWords = (fault: unknown) => (fault instanceof Error ? (fault.message.split('\n')[0] as string) : String(fault))

/** SQLSTATEs of PostgreSQL: data_corrupted, index_corrupted, undefined_file. */
const DAMAGE = new Set(['XX001', 'XX002', '58P01'])

interface Engine {
  _PostgresMainLoopOnce(): void
}
type Ask = (...given: unknown[]) => Promise<unknown>
interface Asked {
  readonly POSTGRES_MAIN_LONGJMP: number
  execProtocol: Ask
  execProtocolStream: Ask
}

/** Tells once when the database cannot go on, and lets nobody ask it after a panic. */
export function heedFaults(pglite: PGlite, broken: (fault: DatabasePanic | DatabaseDamaged) => void): void {
  const asked = pglite as unknown as Asked
  let isTold = false
  const tell = (fault: DatabasePanic | DatabaseDamaged) => {
    if (!isTold) broken(fault)
    isTold = true
  }
  const heeded = (ask: Ask): Ask => {
    const plain = ask.bind(pglite)
    return (...given) =>
      plain(...given).catch((fault) => {
        if (DAMAGE.has(fault?.code)) tell(new DatabaseDamaged(fault))
        throw fault
      })
  }
  asked.execProtocol = heeded(asked.execProtocol)
  asked.execProtocolStream = heeded(asked.execProtocolStream)
  endOnPanic(pglite.Module as unknown as Engine, asked.POSTGRES_MAIN_LONGJMP, tell)
}

/**
 * PGlite runs the engine's loop again after whatever it throws, also after a panic (a disk too full for the write-ahead
 * log), when it can only throw again: the whole process would spin for ever. So what a panic throws throws once more when
 * PGlite looks whether it is the jump that ends a failed statement.
 */
function endOnPanic(engine: Engine, jump: number, tell: (panic: DatabasePanic) => void): void {
  const once = engine._PostgresMainLoopOnce
  let panic: DatabasePanic | undefined
  const thrownAgain = Object.defineProperty({}, 'status', {
    get: () => {
      throw panic
    },
  })
  engine._PostgresMainLoopOnce = () => {
    if (panic) throw thrownAgain
    try {
      once()
    } catch (thrown) {
      if ((thrown as { status?: number }).status === jump) throw thrown
      panic = new DatabasePanic(thrown)
      tell(panic)
      throw thrownAgain
    }
  }
}

/** Lets go of an instance that has panicked, its open files included; asked to close it would write once more. */
export function abandon(pglite: PGlite): void {
  try {
    ;(pglite.Module as unknown as { FS: { quit(): void } }).FS.quit()
  } catch {
    // Nothing more can be done for it.
  }
}
