import type { DayState } from '../log/day-state'
import type { EntryOf } from '../log/entry'
import { markKey } from '../log/mark-key'
import type { Stage } from '../model/cook'
import type { Cook, Shoot } from '../plan/shoot'
import { type Celsius, celsius, type Instant, type Seconds, seconds } from '../units'
import type { SessionDay } from './session-day'

/** What is changed of a cook under way, from when. */
export type CookChange = NonNullable<EntryOf<'what-if-adopted'>['change']>
type Told = Pick<DayState, 'changes' | 'marks'>
interface Adopted {
  readonly change: CookChange
  readonly at: Instant
}

const adoptedOf = ({ changes }: Pick<DayState, 'changes'>): Adopted[] =>
  changes.flatMap(({ entry, at }) =>
    entry.kind === 'what-if-adopted' && entry.change ? [{ change: entry.change, at }] : [],
  )

/** The shoot with what was adopted on the set. */
export function shootAsAdopted(shoot: Shoot, told: Told): Shoot {
  const adopted = adoptedOf(told)
  if (adopted.length === 0) return shoot
  return { ...shoot, cooks: shoot.cooks.map((cook) => cookAsAdopted(cook, adopted, told)) }
}

function cookAsAdopted(cook: Cook, adopted: readonly Adopted[], { marks }: Told): Cook {
  const meatOn = marks[markKey(cook.id, 'meat-on')]?.at ?? null
  let stages: Cook['stages'] = cook.stages
  for (const { change, at } of adopted)
    if (change.cook === cook.id) stages = changed(stages, change, meatOn === null ? 0 : (at - meatOn) / 1000)
  return { ...cook, stages }
}

function changed(stages: readonly Stage[], { core, cooker, rest }: CookChange, sinceS: number): Cook['stages'] {
  const heated = cooker === undefined ? stages : heatedFrom(stages, cooker, sinceS)
  const last = heated.findLastIndex((stage) => stage.do === 'roast')
  return heated.map((stage, i): Stage => {
    if (i === last && stage.do === 'roast' && core !== undefined) return { ...stage, until: { core } }
    if (stage.do !== 'rest' || rest === undefined) return stage
    return { ...stage, until: { after: rest }, ...(stage.max === undefined ? {} : { max: longer(stage.max, rest) }) }
  }) as Cook['stages']
}
const longer = (a: Seconds, b: Seconds) => seconds(Math.max(a, b))

/** What was roasted until then stays as it was: the stage is cut in two. */
function heatedFrom(stages: readonly Stage[], at: Celsius, sinceS: number): readonly Stage[] {
  const last = stages.findLastIndex((stage) => stage.do === 'roast')
  const before = stages.slice(0, last).reduce((sum, stage) => sum + fixedS(stage), 0)
  const doneS = Math.round(sinceS - before)
  return stages.flatMap((stage, i): Stage[] => {
    if (stage.do === 'preheat' && sinceS <= 0) return [{ ...stage, at }]
    if (i !== last || stage.do !== 'roast') return [stage]
    if (doneS <= 0) return [{ ...stage, at }]
    const { max, until, ...kept } = stage
    const left = 'after' in until ? { after: seconds(Math.max(0, until.after - doneS)) } : until
    const cap = max === undefined ? {} : { max: seconds(Math.max(1, max - doneS)) }
    return [
      { ...kept, until: { after: seconds(doneS) } },
      { do: 'roast', at, until: left, ...cap },
    ]
  })
}
const fixedS = (stage: Stage) => (stage.do === 'roast' && 'after' in stage.until ? stage.until.after : 0)

/** What a cook is set to now, as far as it can be asked otherwise. */
export interface CookSet {
  readonly cook: string
  readonly core: Celsius | null
  readonly cooker: Celsius | null
  readonly rest: Seconds | null
}
export function cookSet(cook: Pick<Cook, 'id' | 'stages'>): CookSet {
  const roast = cook.stages.findLast((stage) => stage.do === 'roast')
  const rest = cook.stages.find((stage) => stage.do === 'rest')
  return {
    cook: cook.id,
    core: roast && 'core' in roast.until ? roast.until.core : null,
    cooker: roast?.at ?? null,
    rest: rest && 'after' in rest.until ? rest.until.after : null,
  }
}
export function setNow(set: CookSet, told: Pick<DayState, 'changes'>): CookSet {
  const changes = adoptedOf(told).flatMap(({ change }) => (change.cook === set.cook ? [change] : []))
  return Object.assign({}, set, ...changes)
}

/** Whom the day calls by a core: pulled at another one, what calls them moves as much. */
export function pulledAsAdopted(day: SessionDay, told: Pick<DayState, 'changes'>): SessionDay {
  const cores = new Map(
    adoptedOf(told).flatMap(({ change: { cook, core } }) => (core === undefined ? [] : [[cook, core]])),
  )
  if (cores.size === 0) return day
  const by = new Map(
    day.cooks.map(({ id, pullAt }) => [id, pullAt === null ? 0 : (cores.get(id) ?? pullAt) - pullAt] as const),
  )
  return {
    ...day,
    cooks: day.cooks.map((cook) => ({ ...cook, pullAt: cores.get(cook.id) ?? cook.pullAt })),
    calls: day.calls.map((call) =>
      call.trigger === null ? call : { ...call, trigger: celsius(call.trigger + (by.get(call.cook) ?? 0)) },
    ),
  }
}
