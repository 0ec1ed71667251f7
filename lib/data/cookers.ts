import 'server-only'
import { createHash } from 'node:crypto'
import { z } from 'zod'
import { COOKER_KINDS, type CookerKind } from '../model/cook'
import type { CookerLesson } from '../model/memory'
import { appendLines, filesIn, readLines } from './line-file'
import { notTaken } from './not-taken'

/** A cooker that somebody gave a name, with what its logged cooks have taught. */
export interface KeptCooker {
  readonly id: string
  readonly name: string
  readonly kind: CookerKind
  /** None while it is forgotten. */
  readonly lessons: readonly CookerLesson[]
  /** Cooks that were forgotten last, and can be had back. */
  readonly forgotten: number
}

const belief = z.object({ mean: z.number(), sd: z.number() })
const LESSON = z.object({
  cook: z.string(),
  date: z.string(),
  level: belief.extend({ before: z.number() }),
  pace: belief.extend({ before: z.number() }),
  tie: z.number(),
  warmUpS: z.number().optional(),
})
/** A journal each, in the folder `cookers`: what was kept, forgotten and taken back, in order. */
const LINE = z.union([
  z.object({ at: z.number(), name: z.string(), kind: z.enum(COOKER_KINDS), lesson: LESSON }),
  z.object({ at: z.number(), forgotten: z.boolean() }),
])
type Step = z.output<typeof LINE>

/** The same name of the same kind is the same cooker, however it is written. */
export const cookerIdOf = (name: string, kind: CookerKind) =>
  createHash('sha256').update(`${kind}/${name.trim().toLowerCase()}`).digest('hex').slice(0, 16)

const COOKERS = 'cookers'
const fileOf = (id: string) => `${COOKERS}/${id}`

/** Keeps what a cook taught; a cook that is kept again is put in place of itself. */
export async function keepLesson(name: string, kind: CookerKind, lesson: CookerLesson, at: number): Promise<string> {
  const id = cookerIdOf(name, kind)
  await append(id, { at, name: name.trim(), kind, lesson: lesson as z.output<typeof LESSON> })
  return id
}
/** Forgets what was learnt, or takes that back. False where there is nothing to forget, or to take back. */
export async function forgetCooker(id: string, forgotten: boolean, at: number): Promise<boolean> {
  const cooker = await readCooker(id)
  if (!cooker || (forgotten ? cooker.lessons.length : cooker.forgotten) === 0) return false
  await append(id, { at, forgotten })
  return true
}
const append = (id: string, step: Step) =>
  appendLines(fileOf(id), [JSON.stringify(step)]).catch(
    notTaken((why) => `The disk did not take it (${why}); nothing was changed.`),
  )

export async function keptCookers(): Promise<readonly KeptCooker[]> {
  const ids = (await filesIn(COOKERS)).map((file) => file.slice(COOKERS.length + 1))
  const all = await Promise.all(ids.map(readCooker))
  return all.filter((one) => one !== null).sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1))
}

const keyOf = ({ name, kind }: KeptCooker) => `${name} ${kind}`

async function readCooker(id: string): Promise<KeptCooker | null> {
  if (!/^[0-9a-f]{16}$/.test(id)) return null
  return folded(id, (await readLines(fileOf(id))).flatMap(stepOf))
}
/** A line that a power cut left half written does not count. */
function stepOf(line: string): Step[] {
  try {
    const read = LINE.safeParse(JSON.parse(line))
    return read.success ? [read.data] : []
  } catch {
    return []
  }
}
function folded(id: string, steps: readonly Step[]): KeptCooker | null {
  let named: Pick<KeptCooker, 'name' | 'kind'> | null = null
  let lessons = new Map<string, CookerLesson>()
  let forgotten = new Map<string, CookerLesson>()
  for (const step of steps) {
    if ('lesson' in step) {
      named = { name: step.name, kind: step.kind }
      const { lesson } = step
      lessons.set(lesson.cook, lesson as CookerLesson)
    } else if (step.forgotten) {
      // Told twice at once, the second forgets nothing and leaves what can be had back.
      if (lessons.size > 0) forgotten = lessons
      lessons = new Map()
    } else {
      lessons = new Map([...forgotten, ...lessons])
      forgotten = new Map()
    }
  }
  return named && { id, ...named, lessons: [...lessons.values()], forgotten: forgotten.size }
}
