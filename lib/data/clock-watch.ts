import 'server-only'
import { formatDuration, seconds } from '../units'
import { database } from './client'
import { say } from './say'

const LOOK_MS = 5000
/** Time servers move a clock by less without anybody noticing. [estimate] */
const STEP_MS = 5000

/** Notices that a clock was set back, by one that only runs on. */
export class ClockWatch {
  #wall: number
  #steady: number

  constructor(wall: number, steady: number) {
    this.#wall = wall
    this.#steady = steady
  }
  /** So many milliseconds it was set back since the last look; 0 where it was not. A computer that slept looks set ahead. */
  look(wall: number, steady: number): number {
    const back = this.#wall + (steady - this.#steady) - wall
    this.#wall = wall
    this.#steady = steady
    return back >= STEP_MS ? back : 0
  }
}

const by = (ms: number) => formatDuration(seconds(Math.round(ms / 1000)))
export const backWords = (ms: number) =>
  `This computer's clock went back by ${by(ms)}. Nothing is lost, and entries stay in the order they came in; times logged before it are off by so much. Check the calls of a day under way.`

/** Looks every few seconds for as long as the process runs. */
export function watchClock(): void {
  const watch = new ClockWatch(Date.now(), performance.now())
  setInterval(() => {
    const back = watch.look(Date.now(), performance.now())
    if (back > 0) say('warn', 'clock-went-back', { backS: Math.round(back / 1000), words: backWords(back) })
  }, LOOK_MS).unref()
}

/** What was kept last was kept later than it is now: then or now the clock is wrong. */
export async function aheadNote(now = Date.now()): Promise<string | null> {
  const { prisma } = await database()
  const [row] = await prisma.$queryRaw<{ newest: Date | null }[]>`
    SELECT greatest(max("Shoot"."updatedAt"), max(line."received")) AS "newest" FROM "Shoot" LEFT JOIN LATERAL (
      SELECT "received" FROM "LogLine" WHERE "shootId" = "Shoot"."id" ORDER BY "position" DESC LIMIT 1
    ) AS line ON true`
  const ahead = (row?.newest?.getTime() ?? now) - now
  if (ahead < STEP_MS) return null
  return `The newest entry here is dated ${by(ahead)} after what this computer's clock says (${new Date(now).toISOString()}). Nothing is lost. Set the clock right before the next day; if it ran ahead before, entries of then keep those times.`
}
