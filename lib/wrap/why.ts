import type { CookPlan, LidOpening } from '../model/cook'
import type { Forecast } from '../model/forecast'
import type { MomentId } from '../model/moment-ids'
import { medianOf } from '../model/quantiles'
import type { Reading } from '../model/readings'
import { type Celsius, type Instant, type Kelvins, type Seconds, seconds } from '../units'
import { cookerRead, dialOf, lidOpenFor, pullCore, withLevel, withLids, withPull, withTurn } from './as-it-was'
import type { Span } from './told'

/** Why a cook did not end when the plan said: what was otherwise, each with its minutes, and what is left over. */

export type Cooked = Pick<Forecast, 'moments' | 'trace'>
export interface WhyInput {
  /** As the model was told it in the morning. */
  readonly plan: CookPlan
  readonly morning: Readonly<Partial<Record<MomentId, Span>>>
  readonly happened: Readonly<Partial<Record<MomentId, Instant>>>
  /** Since the meat went on. */
  readonly readings: readonly Reading[]
  /** Empty where nobody logged the lid. */
  readonly lids: readonly LidOpening[]
  /** What the probe read as the roast was pulled. */
  readonly pulledAt: Celsius | null
  /** The same members cook every plan. */
  readonly cook: (plan: CookPlan) => Cooked
}
/** Something that was otherwise than planned; later is positive. */
export type Cause = { readonly byS: Seconds } & (
  | { readonly what: 'fire'; readonly lateS: Seconds; readonly caughtUp: boolean }
  | { readonly what: 'meat-on' }
  | { readonly what: 'cooker'; readonly held: Celsius; readonly asked: Celsius; readonly offK: Kelvins }
  | { readonly what: 'lid'; readonly open: Seconds; readonly asked: Seconds }
  | { readonly what: 'turn'; readonly lateS: Seconds }
  | { readonly what: 'pulled'; readonly at: Celsius; readonly asked: Celsius }
  | { readonly what: 'sear' | 'rest'; readonly took: Seconds; readonly asked: Seconds }
)
export interface Why {
  /** The last moment that was marked, and by how much it missed the likely time. */
  readonly end: MomentId
  readonly byS: Seconds
  readonly causes: readonly Cause[]
  /** What none of them accounts for. */
  readonly unexplainedS: Seconds
}

/** A fire that is lit so late is told of. [estimate] */
const FIRE_LATE_S = 300
/** Less than this nobody sees. [estimate] */
const LEAST_LEVEL_K = 1
const LEAST_PULL_K = 0.7
const LEAST_TURN_S = 60
const ENDS: readonly MomentId[] = ['pull', 'off-heat', 'first-slice']

/** Null where the start or every end of the cook was left unmarked. */
export function whyOf(input: WhyInput): Why | null {
  const off = offBy(input)
  const start = off('meat-on')
  const marked = ENDS.filter((moment) => off(moment) !== null)
  const [anchor, end] = [marked[0], marked.at(-1)]
  if (start === null || anchor === undefined || end === undefined) return null
  const causes = [...startCauses(off, start), ...heatCauses(input, anchor), ...afterwards(input, marked)]
  const byS = off(end) as Seconds
  const told = causes.reduce((sum, cause) => sum + cause.byS, 0)
  return { end, byS, causes, unexplainedS: seconds(byS - told) }
}

type OffBy = (moment: MomentId) => Seconds | null
const offBy =
  ({ morning, happened }: WhyInput): OffBy =>
  (moment) => {
    const [was, planned] = [happened[moment], morning[moment]?.likely]
    return was === undefined || planned == null ? null : seconds((was - planned) / 1000)
  }

function startCauses(off: OffBy, byS: Seconds): Cause[] {
  const fire = off('fire-lit')
  const late = fire !== null && fire >= FIRE_LATE_S
  const lit: Cause[] = late ? [{ what: 'fire', byS: seconds(0), lateS: fire, caughtUp: byS < fire / 2 }] : []
  return [...lit, { what: 'meat-on', byS }]
}

/** What was observed is put into the plan one thing after another; what each moves is its own. */
function heatCauses(input: WhyInput, anchor: MomentId): Cause[] {
  const meatOn = input.happened['meat-on'] as Instant
  const sinceS = (moment: MomentId) => {
    const at = input.happened[moment]
    return at === undefined ? undefined : seconds((at - meatOn) / 1000)
  }
  const endS = sinceS(anchor) as Seconds
  const first = input.cook(input.plan)
  const steps = new Steps(input, anchor, first)
  const read = cookerRead(input.readings, first.trace, endS)
  const dial = dialOf(input.plan)
  if (read && dial !== null && Math.abs(read.offK) >= LEAST_LEVEL_K)
    steps.put((plan) => withLevel(plan, read.offK), { what: 'cooker', ...read, asked: dial })
  if (input.lids.length > 0) {
    const asked = lidOpenFor(input.plan, endS)
    const open = lidOpenFor(withLids(input.plan, input.lids), endS)
    steps.put((plan) => withLids(plan, input.lids), { what: 'lid', open, asked })
  }
  const turn = turnedLate(first, sinceS('turn'))
  if (turn !== null)
    steps.put((plan) => withTurn(plan, sinceS('turn'), sinceS('probe-in')), { what: 'turn', lateS: turn })
  const core = pullCore(input.plan)
  const { pulledAt } = input
  if (pulledAt !== null && core !== null && anchor === 'pull' && Math.abs(pulledAt - core) >= LEAST_PULL_K)
    steps.put((plan) => withPull(plan, pulledAt), { what: 'pulled', at: pulledAt, asked: core })
  return steps.causes
}

type What<C> = C extends unknown ? Omit<C, 'byS'> : never
class Steps {
  readonly causes: Cause[] = []
  #plan: CookPlan
  #atS: number
  constructor(
    readonly input: WhyInput,
    readonly anchor: MomentId,
    first: Cooked,
  ) {
    this.#plan = input.plan
    this.#atS = likelyS(first, anchor)
  }
  put(change: (plan: CookPlan) => CookPlan, what: What<Cause>): void {
    this.#plan = change(this.#plan)
    const atS = likelyS(this.input.cook(this.#plan), this.anchor)
    const byS = atS - this.#atS
    // A cook that would never have ended so explains nothing.
    if (!Number.isFinite(byS)) return
    this.#atS = atS
    this.causes.push({ ...what, byS: seconds(byS) } as Cause)
  }
}
function likelyS({ moments }: Cooked, moment: MomentId): number {
  const samples = moments[moment]
  return samples ? medianOf(samples) : Number.NaN
}
function turnedLate(first: Cooked, turnS: Seconds | undefined): Seconds | null {
  const late = (turnS ?? Number.NaN) - likelyS(first, 'turn')
  return Math.abs(late) >= LEAST_TURN_S ? seconds(late) : null
}

/** From the pull on the marks tell all. */
function afterwards({ morning, happened }: WhyInput, marked: readonly MomentId[]): Cause[] {
  const what = { 'off-heat': 'sear', 'first-slice': 'rest' } as const
  return marked.slice(1).flatMap((moment, i): Cause[] => {
    const before = marked[i] as MomentId
    const [from, to] = [morning[before]?.likely, morning[moment]?.likely]
    const [began, ended] = [happened[before], happened[moment]]
    if (from == null || to == null || began === undefined || ended === undefined) return []
    const [took, asked] = [seconds((ended - began) / 1000), seconds((to - from) / 1000)]
    const named = moment === 'first-slice' ? what['first-slice'] : what['off-heat']
    return [{ what: named, took, asked, byS: seconds(took - asked) }]
  })
}
