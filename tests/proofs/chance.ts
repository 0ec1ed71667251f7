import { readFileSync } from 'node:fs'
import { parsed } from '../../lib/cli/committed-days'
import { realisticDay } from '../../lib/cli/realistic-day'
import { captureOf, replayOf } from '../../lib/day/capture'
import { layOutDay } from '../../lib/day/lay-out'
import type { Layout } from '../../lib/day/layout'
import { RULES } from '../../lib/day/rules'
import { safeLow } from '../../lib/day/samples'
import type { Forecast } from '../../lib/model/forecast'
import { forecastCook } from '../../lib/model/forecast-cook'
import { toCookPlan } from '../../lib/plan/cook-plan'
import type { Shoot, ShootDocument } from '../../lib/plan/shoot'

const EACH = 0.95
const JOINT = 0.9
const DAYS_SHARE = 0.95
/** Else the days are too hard to say anything. */
const ABLE_SHARE = 0.5
const TRIGGER_SHARE = 0.95
const FRESH = 5000
const SWEEPS = 25
const GENERATED: readonly (readonly [shots: number, days: number])[] = [
  [20, 14],
  [40, 8],
]
/** One roast after another for the generated days: mass, and how hot it roasts. */
const ROASTS = [
  ['2.6 kg', '160 °C'],
  ['3.6 kg', '150 °C'],
  ['4.4 kg', '140 °C'],
] as const

/**
 * Days with real forecasts, laid out on 256 members and replayed in 5,000 that they have never seen: the share of days
 * whose every moment is captured, beside those that manage it with their moment shots alone; how long operators stand
 * ready, and how often a crew called by the probe is ready in time.
 */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const days = shoots(seed).map((shoot, i) => {
    const day = dayOf(shoot, seed * 1000 + i)
    console.log(day.line)
    return day
  })
  const able = days.filter((d) => d.alone)
  const kept = able.filter((d) => d.whole)
  const triggers = days.flatMap((d) => d.triggers)
  const mean = (all: readonly number[]) => rounded(all.reduce((sum, x) => sum + x, 0) / Math.max(1, all.length))
  const figures = {
    days: days.length,
    fresh_members: FRESH,
    days_reached_with_moments_alone: able.length,
    of_these_reached_whole: kept.length,
    reached_share: rounded(kept.length / able.length),
    standby_closed_min_per_operator: mean(days.flatMap((d) => d.standby.map((s) => s.closed))),
    standby_open_min_per_operator: mean(days.flatMap((d) => d.standby.map((s) => s.open))),
    triggers: triggers.length,
    triggers_in_time_share: rounded(triggers.filter((share) => share >= TRIGGER_SHARE).length / triggers.length),
    trigger_lead_kept_worst: rounded(Math.min(...triggers)),
  }
  const tooHard = able.length < ABLE_SHARE * days.length || triggers.length === 0
  if (tooHard || figures.reached_share < DAYS_SHARE || figures.trigger_lead_kept_worst < TRIGGER_SHARE)
    throw new Error(JSON.stringify(figures, null, 2))
  return figures
}
const rounded = (x: number) => Math.round(1000 * x) / 1000

function shoots(seed: number): Shoot[] {
  const files = ['prisma/demo/leg-of-lamb', 'tests/fixtures/shoots/pork-loin', 'tests/fixtures/shoots/turkey-oven']
  const read = files.map((file) => parsed(JSON.parse(readFileSync(`${file}.json`, 'utf8')) as ShootDocument))
  const drawn = GENERATED.flatMap(([shots, days]) =>
    Array.from({ length: days }, (_, i) => withRoast(realisticDay(shots, seed * 100 + i).document, i)),
  )
  return [...read, overnight(), ...drawn]
}
type Written = { roast: object; stages: { do: string }[] }
/** One of a few roasts, all of which rest alike: so that a fresh ensemble serves several days. */
function withRoast(document: ShootDocument, i: number): Shoot {
  const written = document as { cooks: Written[] }
  const [mass, pit] = ROASTS[i % ROASTS.length] as (typeof ROASTS)[number]
  const cooks = written.cooks.map((cook) => ({
    ...cook,
    roast: { ...cook.roast, mass },
    stages: cook.stages.map((s) => {
      if (s.do === 'rest') return { ...s, until: { after: '20 min' } }
      return s.do === 'sear' ? s : { ...s, at: pit }
    }),
  }))
  return parsed({ ...document, cooks })
}
/** A brisket put on in the evening and sliced at noon, on the crew and shots of a generated day. */
function overnight(): Shoot {
  const document = realisticDay(20, 77).document as { shots: { cook?: string; at?: { moment: string } }[] }
  const stages = [
    { do: 'preheat', at: '110 °C' },
    { do: 'roast', at: '110 °C', until: { core: '93 °C' }, probe: { at: 'start' } },
    { do: 'rest', until: { after: '60 min' }, max: '3 h' },
  ]
  const roast = { cut: 'beef-brisket', mass: '3.2 kg', start: '4 °C' }
  const cooks = [{ id: 'hero', roast, cooker: { kind: 'pellet' }, stages }]
  const gone = ['turn', 'vents-open', 'sear-start']
  const shots = document.shots.filter((s) => s.cook !== 'twin' && !gone.includes(s.at?.moment ?? ''))
  return parsed({ ...document, cooks, shots, tasks: [], day: { call: '18:00' } })
}

const known = new Map<string, Forecast>()
/** Every cook of a shoot draws members of its own; two days with the same roast share them. */
function freshOf(shoot: Shoot): Map<string, Forecast> {
  return new Map(
    shoot.cooks.map((cook, c) => {
      const plan = toCookPlan(shoot, cook)
      const key = JSON.stringify([c, plan.roast, plan.cooker, plan.stages, plan.surroundings])
      const forecast = known.get(key) ?? forecastCook(plan, { seed: 900_000 + c, members: FRESH, kernel: 'simd' })
      known.set(key, forecast)
      return [cook.id, forecast]
    }),
  )
}

function dayOf(shoot: Shoot, seed: number) {
  const forecasts = new Map(
    shoot.cooks.map((cook, c) => [
      cook.id,
      forecastCook(toCookPlan(shoot, cook), { seed: seed + 500_000 * c, kernel: 'simd' }),
    ]),
  )
  const fresh = freshOf(shoot)
  const onlyMoments: Shoot = { ...shoot, shots: (shoot.shots ?? []).filter((s) => s.at) }
  const whole = layOutDay(shoot, forecasts, { seed, sweeps: SWEEPS })
  const alone = layOutDay(onlyMoments, forecasts, { seed, sweeps: SWEEPS })
  const [ofWhole, ofAlone] = [sharesOf(shoot, whole, fresh), sharesOf(onlyMoments, alone, fresh)]
  const standby = standbyOf(shoot, whole, fresh)
  const text = ({ least, joint, at }: Shares) => `${Math.round(1000 * least) / 10} % (${at}), all ${Math.round(1000 * joint) / 10} %`
  return {
    whole: reaches(ofWhole),
    alone: reaches(ofAlone),
    standby,
    triggers: triggersOf(shoot, whole, fresh),
    line: `${shoot.title}: ${text(ofWhole)}; moments alone ${text(ofAlone)}; standby ${standby.map((s) => `${s.operator} ${rounded(s.closed)} min, by the clock ${rounded(s.open)}`).join('; ')}`,
  }
}

interface Shares {
  readonly least: number
  readonly at: string
  readonly joint: number
}
const reaches = ({ least, joint }: Shares) => least >= EACH && joint >= JOINT
/** A moment that somebody wanted filmed and no shot stands at is captured in no cook. */
function sharesOf(shoot: Shoot, layout: Layout, fresh: ReadonlyMap<string, Forecast>): Shares {
  const { each, joint } = captureOf(shoot, layout, fresh)
  const wanted = new Set(
    (shoot.shots ?? []).flatMap((s) => (s.at ? [`${s.cook ?? shoot.cooks[0]?.id}/${s.at.moment}`] : [])),
  )
  const shares = [...wanted].map((key) => [key, each[key] ?? 0] as const).sort((a, b) => a[1] - b[1])
  const [at, least] = shares[0] ?? ['none', 1]
  return { least, at, joint: shares.every(([key]) => key in each) ? joint : 0 }
}

/**
 * Mean minutes in which each operator stands ready and nothing rolls: called live, and by a clock set so early that it
 * misses no more often than a live call may.
 */
function standbyOf(shoot: Shoot, layout: Layout, fresh: ReadonlyMap<string, Forecast>) {
  const replayed = replayOf(shoot, layout, fresh)
  const operators = [...new Set(replayed.flatMap((r) => r.operators))].sort()
  const mean = (due: Float64Array, readyIn: (m: number) => number) => {
    const waits = [...due].flatMap((t, m) => (Number.isFinite(t) ? [Math.max(0, t - readyIn(m))] : []))
    return waits.reduce((sum, w) => sum + w, 0) / Math.max(1, waits.length)
  }
  return operators.map((operator) => {
    const own = replayed.filter((r) => r.operators.includes(operator))
    return {
      operator,
      closed: own.reduce((sum, { due, ready }) => sum + mean(due, (m) => ready[m] as number), 0),
      open: own.reduce((sum, { due }) => {
        const sure = safeLow(Float64Array.from(due).sort(), RULES.missShare)
        return sum + mean(due, () => sure)
      }, 0),
    }
  })
}

/**
 * Of each call by the probe: how often everybody is ready in time, taking as long to come as they may. Where an earlier
 * moment holds them too long no call could bring them: that is a clash of the two, and `captureOf` counts it.
 */
function triggersOf(shoot: Shoot, layout: Layout, fresh: ReadonlyMap<string, Forecast>): number[] {
  return replayOf(shoot, layout, fresh, true)
    .filter((r) => r.byTrigger)
    .map(({ due, ready, soonest }) => {
      const inTime = (t: number, m: number) => (ready[m] as number) <= t + 1e-6
      const callable = [...due].flatMap((t, m) =>
        Number.isFinite(t) && (soonest[m] as number) <= t + 1e-6 ? [inTime(t, m)] : [],
      )
      return callable.filter(Boolean).length / Math.max(1, callable.length)
    })
}
