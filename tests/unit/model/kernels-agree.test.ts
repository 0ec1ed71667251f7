import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import type { CookPlan } from '../../../lib/model/cook'
import type { Forecast } from '../../../lib/model/forecast'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { MOMENT_IDS } from '../../../lib/model/moment-ids'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { parseShootText } from '../../../lib/plan/parse'
import { celsius } from '../../../lib/units'
import { anyPlan } from '../../laws/cooks'

const SEED = 11
const MEMBERS = 12
const RANDOM_PLANS = 12
/** design.md §4. */
const WITHIN_K = 0.06
const WITHIN_S = 5
const WITHIN_LOSS = 0.001
const WITHIN_KILL = 0.01
const WITHIN_FUEL_KG = 0.005
/** Where the core moves more slowly than this, a second means nothing: there the temperatures are held against each other. */
const SLOW_KPS = 0.02 / 60

interface Apart {
  readonly core: number
  readonly probe: number
  readonly moments: number
  /** Moments of a core that hardly moves, in what it moves within the difference. */
  readonly slowMomentsK: number
  readonly loss: number
  readonly kill: number
  readonly fuelKg: number
  /** Members that get to a moment by one kernel only. */
  readonly missed: number
}

function apart(plain: Forecast, simd: Forecast): Apart {
  const most = (of: (m: number) => number) => Math.max(...Array.from({ length: plain.members }, (_, m) => of(m)))
  // a member is followed to its peak, which on a flat top comes a step later in one of the kernels
  const bothGo = (m: number) => {
    const peaks = [plain, simd].map(({ moments }) => moments['carryover-peak']?.[m] ?? Infinity)
    const minutes = Math.ceil((Math.min(...peaks) - plain.trace.startS) / plain.trace.stepS)
    return Math.min(plain.trace.count, simd.trace.count, minutes)
  }
  const column = (name: 'coreC' | 'probeC') =>
    most((m) => {
      let worst = 0
      for (let i = 0; i < bothGo(m); i++) {
        const a = plain.trace[name][m * plain.trace.count + i] as number
        const b = simd.trace[name][m * simd.trace.count + i] as number
        worst = Math.max(worst, Math.abs(a - b))
      }
      return worst
    })
  const times = MOMENT_IDS.flatMap((id) => {
    const [a, b] = [plain.moments[id], simd.moments[id]]
    if (a === undefined || b === undefined) return []
    return Array.from(a, (timeS, m) => ({ id, m, timeS, byS: timeS === b[m] ? 0 : Math.abs(timeS - (b[m] as number)) }))
  })
  const reached = times.filter(({ byS }) => Number.isFinite(byS))
  const slow = (time: { m: number; timeS: number; id: string }) => slopeAt(plain, time.m, time.timeS) < SLOW_KPS
  const killed = (m: number) => plain.lethalityLog[m] as number
  return {
    core: column('coreC'),
    probe: column('probeC'),
    moments: Math.max(0, ...reached.filter((time) => !slow(time)).map(({ byS }) => byS)),
    slowMomentsK: Math.max(0, ...reached.filter(slow).map(({ m, timeS, byS }) => byS * slopeAt(plain, m, timeS))),
    loss: most((m) => Math.abs((plain.lossFrac[m] as number) - (simd.lossFrac[m] as number))),
    kill: most((m) => (killed(m) > 0.01 ? Math.abs((simd.lethalityLog[m] as number) / killed(m) - 1) : 0)),
    fuelKg: most((m) => Math.abs((plain.fuelKg?.[m] ?? 0) - (simd.fuelKg?.[m] ?? 0))),
    missed: times.length - reached.length,
  }
}
/** How fast the core moves in the minute about a time, K/s. */
function slopeAt({ trace }: Forecast, m: number, timeS: number): number {
  if (!Number.isFinite(timeS)) return 0
  const i = Math.min(trace.count - 2, Math.max(0, Math.floor((timeS - trace.startS) / trace.stepS)))
  const at = (n: number) => trace.coreC[m * trace.count + n] as number
  return Math.abs(at(i + 1) - at(i)) / trace.stepS
}

const worst: Record<string, number> = {}
function expectAlike(plan: CookPlan) {
  const found = apart(
    forecastCook(plan, { seed: SEED, members: MEMBERS }),
    forecastCook(plan, { seed: SEED, members: MEMBERS, kernel: 'simd' }),
  )
  for (const [what, value] of Object.entries(found)) worst[what] = Math.max(worst[what] ?? 0, value)
  const told = `${plan.roast.cut} in ${plan.cooker.kind}, ${JSON.stringify(plan.stages)}`
  expect(found.core, told).toBeLessThan(WITHIN_K)
  expect(found.probe, told).toBeLessThan(WITHIN_K)
  expect(found.moments, told).toBeLessThan(WITHIN_S)
  expect(found.slowMomentsK, told).toBeLessThan(WITHIN_K)
  expect(found.loss, told).toBeLessThan(WITHIN_LOSS)
  expect(found.kill, told).toBeLessThan(WITHIN_KILL)
  expect(found.fuelKg, told).toBeLessThan(WITHIN_FUEL_KG)
  expect(found.missed, told).toBe(0)
}

const FILES = [
  'prisma/demo/leg-of-lamb.json',
  ...readdirSync('tests/fixtures/shoots').map((f) => `tests/fixtures/shoots/${f}`),
]
const shootPlans = FILES.flatMap((file) => {
  const read = parseShootText(readFileSync(file, 'utf8'))
  return read.ok
    ? read.value.cooks.map((cook) => ({ name: `${file} ${cook.id}`, plan: toCookPlan(read.value, cook) }))
    : []
})
const randomPlans = fc.sample(anyPlan, { seed: SEED, numRuns: RANDOM_PLANS })

describe('the kernels agree', () => {
  afterAll(() => console.log('kernels apart at most:', JSON.stringify(worst)))

  it.each(shootPlans)('on $name', ({ plan }) => expectAlike(plan))

  it('in a water bath, where nothing evaporates', () => {
    const { plan } = shootPlans[0] as (typeof shootPlans)[number]
    const stages: CookPlan['stages'] = [
      { do: 'preheat', at: celsius(58) },
      { do: 'roast', at: celsius(58), until: { core: celsius(56) }, probe: { at: 'start' } },
    ]
    expectAlike({ ...plan, cooker: { kind: 'water-bath' }, stages })
  })

  it(`on ${RANDOM_PLANS} random plans`, { timeout: 120_000 }, () => {
    for (const plan of randomPlans) expectAlike(plan)
  })

  it('each gives the same bytes again, whatever the size of the ensemble', () => {
    const { plan } = shootPlans[0] as (typeof shootPlans)[number]
    const [a, b, fewer] = [12, 12, 7].map((members) => forecastCook(plan, { seed: SEED, members, kernel: 'simd' })) as [
      Forecast,
      Forecast,
      Forecast,
    ]
    expect(Buffer.from(a.trace.coreC.buffer).equals(Buffer.from(b.trace.coreC.buffer))).toBe(true)
    expect(a.moments).toEqual(b.moments)
    for (const id of MOMENT_IDS) expect(a.moments[id]?.subarray(0, 7)).toEqual(fewer.moments[id])
  })
})
