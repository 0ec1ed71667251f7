import { z } from 'zod'
import { MOMENT_IDS } from '../../model/moment-ids'
import { toInstant, toIso } from '../../plan/clock'
import type { Shoot } from '../../plan/shoot'
import type { Problem, Result } from '../../refusals'
import { instant, seconds } from '../../units'
import type { Layout } from '../layout'

const time = z.string()
const names = z.array(z.string())
const share = z.record(z.string(), z.number())
const elapsed = z.number().transform(seconds)
const one = z.string().transform((name) => [name])

const LAYOUT = z.object({
  asOf: time.optional(),
  start: time,
  meatOn: z.record(z.string(), time).optional(),
  crewCall: time.optional(),
  wrap: time.optional(),
  shots: z.array(
    z.object({
      id: z.string(),
      setupStart: time.optional(),
      start: time,
      end: time,
      people: names,
      camera: z.union([names, one, z.null().transform(() => [])]),
      hold: z.enum(['tentative', 'hard']),
    }),
  ),
  calls: z.array(
    z.object({
      id: z.string(),
      for: z.string(),
      moment: z.enum(MOMENT_IDS).nullish(),
      cook: z.string().nullish(),
      standby: time.nullable(),
      window: z.object({ early: time.nullable(), likely: time.nullable(), late: time.nullable() }),
      trigger: z.object({ cook: z.string(), probe: z.number() }).nullish(),
      follows: z.object({ moment: z.enum(MOMENT_IDS), after: z.number() }).nullish(),
      people: names,
    }),
  ),
  tasks: z.array(z.object({ id: z.string(), start: time, end: time, people: names })),
  meals: z.array(z.object({ start: time, end: time, people: names })),
  personal: z.array(z.object({ person: z.string(), call: time, wrap: time })).optional(),
  dropped: z.array(z.object({ id: z.string(), why: z.string(), wouldSave: z.string() })),
  conflicts: z.array(z.object({ sentence: z.string(), shots: names, people: names, rule: z.string() })),
  capture: z.object({
    each: share,
    joint: z.number(),
    openLoop: z.object({ each: share, joint: z.number() }),
  }),
  lidOpenings: z.record(z.string(), z.array(z.object({ at: elapsed, open: elapsed }))).optional(),
})
type Written = z.output<typeof LAYOUT>

/** A layout from a file. What the short form leaves out follows from the shoot: setups as asked, its call and its wrap. */
export function readLayout(document: unknown, shoot: Shoot): Result<Layout> {
  const read = LAYOUT.safeParse(document)
  if (read.success) return { ok: true, value: completed(read.data, shoot) }
  const problems = read.error.issues.map((issue): Problem => {
    const pointer = issue.path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')
    const wrong = valueAt(document, issue.path) === undefined ? 'This is missing' : 'This is not as a layout has it'
    return { pointer, sentence: `${wrong}. Give what "npm run -s layout" printed.` }
  })
  return { ok: false, problems }
}

const valueAt = (document: unknown, path: readonly PropertyKey[]) =>
  path.reduce<unknown>((value, step) => (value as Record<PropertyKey, unknown> | null | undefined)?.[step], document)

function completed(written: Written, shoot: Shoot): Layout {
  const asked = new Map((shoot.shots ?? []).map((s) => [s.id, s]))
  const sooner = (text: string, byS: number) => {
    const ms = Date.parse(text)
    return Number.isNaN(ms) ? text : toIso(instant(ms - byS * 1000), shoot.zone)
  }
  const clock = (text: string | undefined) =>
    text === undefined ? undefined : toIso(toInstant(shoot, text), shoot.zone)
  const shots = written.shots.map((s) => ({
    ...s,
    setupStart: s.setupStart ?? sooner(s.start, asked.get(s.id)?.setup ?? 0),
  }))
  const inTime = (texts: readonly string[]) => texts.toSorted((a, b) => Date.parse(a) - Date.parse(b))
  const { lidOpenings, asOf, ...rest } = written
  return {
    ...rest,
    ...(asOf === undefined ? {} : { asOf }),
    ...(lidOpenings ? { lidOpenings } : {}),
    shots,
    meatOn: written.meatOn ?? { [shoot.cooks[0]?.id ?? '']: written.start },
    crewCall: written.crewCall ?? clock(shoot.day?.call) ?? inTime(shots.map((s) => s.setupStart))[0] ?? written.start,
    wrap: written.wrap ?? clock(shoot.day?.wrap) ?? inTime(shots.map((s) => s.end)).at(-1) ?? written.start,
    calls: written.calls.map((c) => {
      const shot = asked.get(c.for)
      const cook = c.cook ?? (shot?.at ? (shot.cook ?? shoot.cooks[0]?.id ?? null) : null)
      const follows = (c.follows ?? null) as Layout['calls'][number]['follows']
      return { ...c, moment: c.moment ?? shot?.at?.moment ?? null, cook, trigger: c.trigger ?? null, follows }
    }),
  }
}
