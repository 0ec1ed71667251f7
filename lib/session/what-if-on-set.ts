import type { DayState } from '../log/day-state'
import { markKey } from '../log/mark-key'
import type { MomentId } from '../model/moment-ids'
import { momentName } from '../plan/moments'
import type { Shoot } from '../plan/shoot'
import { celsius, formatDuration, formatTemp, type Instant, minutes, seconds, type UnitSystem } from '../units'
import { type CookChange, type CookSet, setNow } from './adopted'
import type { Expected } from './session'

/** What may still be done otherwise with a cook under way. */
export interface TriedOnSet {
  readonly title: string
  readonly change: CookChange
}

/** Steps that a crew would think of. [estimate] */
const COOKER_BY_K = 10
const CORE_BY_K = 2
const REST_BY_MIN = 10

/** What can be asked of the cooks now, beside what they are set to. */
export function whatIfsOnSet(
  sets: readonly CookSet[],
  told: Pick<DayState, 'changes' | 'marks'>,
  units: UnitSystem,
): TriedOnSet[] {
  return sets.flatMap((set) => {
    const { cook, core, cooker, rest } = stillOpen(setNow(set, told), told)
    const temp = (level: number) => formatTemp(celsius(level), units)
    const tried = (title: string, change: Omit<CookChange, 'cook'>): TriedOnSet => ({
      title: sets.length > 1 ? `${cook}: ${title}` : title,
      change: { cook, ...change },
    })
    const cookerTo = (to: number, word: string) =>
      tried(`The cooker ${word} from now, at ${temp(to)}`, { cooker: celsius(to) })
    const coreTo = (to: number, from: number) =>
      tried(`Pull at ${temp(to)} instead of ${temp(from)}`, { core: celsius(to) })
    const restFor = (min: number, word: string) =>
      tried(`Rest ${formatDuration(minutes(REST_BY_MIN))} ${word}, ${formatDuration(minutes(min))}`, {
        rest: minutes(min),
      })
    return [
      ...(cooker === null ? [] : [cookerTo(cooker + COOKER_BY_K, 'hotter'), cookerTo(cooker - COOKER_BY_K, 'cooler')]),
      ...(core === null ? [] : [coreTo(core - CORE_BY_K, core), coreTo(core + CORE_BY_K, core)]),
      ...(rest === null ? [] : [restFor(rest / 60 + REST_BY_MIN, 'longer')]),
      ...(rest === null || rest <= minutes(REST_BY_MIN) ? [] : [restFor(rest / 60 - REST_BY_MIN, 'shorter')]),
    ]
  })
}

/** What is over cannot be done otherwise. */
function stillOpen(set: CookSet, { marks }: Pick<DayState, 'marks'>): CookSet {
  const isPast = (moment: MomentId) => marks[markKey(set.cook, moment)] !== undefined
  const roasted = isPast('pull') ? { core: null, cooker: null } : {}
  return { ...set, ...roasted, ...(isPast('first-slice') ? { core: null, cooker: null, rest: null } : {}) }
}

/** As an entry of the log says it. */
export const changeDocument = ({ cook, core, cooker, rest }: CookChange) => ({
  cook,
  ...(core === undefined ? {} : { core: formatTemp(core, 'metric', 1) }),
  ...(cooker === undefined ? {} : { cooker: formatTemp(cooker, 'metric', 1) }),
  ...(rest === undefined ? {} : { rest: `${Math.round(rest / 60)} min` }),
})

/** The day as its log would tell it if that were adopted now. */
export const withTried = (told: DayState, { title, change }: TriedOnSet, now: Instant): DayState => {
  const entry = {
    id: 'tried',
    at: now,
    by: { device: 'tried' },
    kind: 'what-if-adopted',
    version: 1,
    what: title,
    change,
  }
  // Nobody logged it, so it has no id such as a device makes.
  return { ...told, changes: [...told.changes, { entry, at: now } as unknown as DayState['changes'][number]] }
}

const TELLING: readonly MomentId[] = ['pull', 'off-heat', 'first-slice']
/** Less than this nobody would notice. */
const SAME_MS = 60_000
/** How much sooner or later the food is ready, in sentences. */
export function besideWords(
  shoot: Shoot,
  cook: string,
  before: readonly Expected[],
  after: readonly Expected[],
): readonly string[] {
  const kind = shoot.cooks.find(({ id }) => id === cook)?.cooker.kind
  const at = (all: readonly Expected[], moment: MomentId) =>
    all.find((one) => one.cook === cook && one.moment === moment) ?? null
  const lines = TELLING.flatMap((moment) => {
    const [was, is] = [at(before, moment), at(after, moment)]
    if (!was || was.sd === 0) return []
    const name = capital(kind ? momentName(moment, kind) : moment)
    if (!is) return [`${name} would not come.`]
    const by = is.likely - was.likely
    if (Math.abs(by) < SAME_MS) return []
    return [`${name} about ${formatDuration(seconds(Math.abs(by) / 1000))} ${by > 0 ? 'later' : 'sooner'}.`]
  })
  return lines.length > 0 ? lines : ['The food is ready when it was to be.']
}
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
