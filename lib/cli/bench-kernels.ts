import type { CookPlan } from '../model/cook'
import { COOKERS } from '../model/cooker'
import { knownCutOf } from '../model/custom-cut'
import { forecastCook } from '../model/forecast-cook'
import { cookAllBy, KERNELS, type KernelName } from '../model/kernels'
import { settingOf } from '../model/setting'
import { geometryOf } from '../model/shape'
import { simulateEight } from '../model/simd/eight'
import { FLOPS_PER_ROUND, flopsPerStep } from '../model/simd/flops'
import { type Kernel, kernel } from '../model/simd/kernel'
import { TAKEN } from '../model/simd/layout'
import type { Setting } from '../model/simulate'
import { drawMember, type Member } from '../model/spread'

type Figures = Record<string, number>
/** A plan that ends after so many hours. */
export type PlanOf = (hours: number) => CookPlan

const MEMBERS = 256
const NODES = 20
const HOURS = 4
const TIMES = 5
/** What grows, one thing at a time: members, nodes, hours. */
const GROWTH = [
  [64, NODES, HOURS],
  [MEMBERS, NODES, HOURS],
  [1024, NODES, HOURS],
  [MEMBERS, 12, HOURS],
  [MEMBERS, 39, HOURS],
  [MEMBERS, NODES, 2],
  [MEMBERS, NODES, 8],
] as const

/** The least of a few runs, the first of which warms the machine up: what others do on the machine only ever adds. */
function leastMs(times: number, work: () => unknown): number {
  let least = Infinity
  for (let i = 0; i <= times; i++) {
    const start = performance.now()
    work()
    if (i > 0) least = Math.min(least, performance.now() - start)
  }
  return least
}

/** Both kernels in one run: whole forecasts, how they grow, and how near the machine's own pace the fast one comes. */
export function benchKernels(planOf: PlanOf, demo: CookPlan): Figures {
  const forecastMs = (plan: CookPlan, name: KernelName, times = TIMES) =>
    leastMs(times, () => forecastCook(plan, { seed: 1, members: MEMBERS, kernel: name }))
  const plan = planOf(HOURS)
  const plainMs = forecastMs(plan, 'plain')
  const simdMs = forecastMs(plan, 'simd', 3 * TIMES)
  return {
    forecast_256x20x4h_plain_ms: plainMs,
    forecast_256x20x4h_simd_ms: simdMs,
    simd_times_faster: plainMs / simdMs,
    forecast_warm_ms: forecastMs(demo, 'simd', 3 * TIMES),
    ...pace(plan),
    ...growth(planOf),
  }
}

/** The members' march alone, without what a forecast makes of it. */
function ensemble(plan: CookPlan, count: number, nodes: number): { setting: Setting; draw: () => Member[] } {
  const cut = knownCutOf(plan.roast)
  const geometry = geometryOf(cut, plan.roast.mass, plan.roast)
  const { thicknessSpread } = geometry
  const input = { startC: plan.roast.start, thicknessSpread, habits: COOKERS[plan.cooker.kind] }
  // a member's cooker draws from its own stream as it goes, so each run needs them new
  const draw = () => Array.from({ length: count }, (_, m) => drawMember(1, m, input))
  return { setting: { ...settingOf(plan, cut, geometry), nodes }, draw }
}

function growth(planOf: PlanOf): Figures {
  const figures: Figures = {}
  for (const [count, nodes, hours] of GROWTH) {
    const { setting, draw } = ensemble(planOf(hours), count, nodes)
    for (const name of KERNELS)
      figures[`members_${count}x${nodes}x${hours}h_${name}_ms`] = leastMs(2, () => cookAllBy(name)(setting, draw()))
  }
  return figures
}

/** Share of the machine's multiply-adds that the kernel's own arithmetic comes to while it runs, one core. */
function pace(plan: CookPlan): Figures {
  const { setting, draw } = ensemble(plan, MEMBERS, NODES)
  const engine = kernel()
  let tookMs = 0
  const timed: Kernel = {
    ...engine,
    advance: () => {
      const start = performance.now()
      const stopped = engine.advance()
      tookMs += performance.now() - start
      return stopped
    },
  }
  let flopsPerS = 0
  for (let i = 0; i < 2 * TIMES; i++) {
    const before = engine.i32[TAKEN >> 2] as number
    tookMs = 0
    simulateEight(setting, draw(), timed)
    const steps = (engine.i32[TAKEN >> 2] as number) - before
    flopsPerS = Math.max(flopsPerS, (steps * flopsPerStep(NODES)) / (tookMs / 1000))
  }
  const rounds = 1_000_000
  const mostPerS = (rounds * FLOPS_PER_ROUND) / (leastMs(TIMES, () => engine.multiplyAdd(rounds)) / 1000)
  return { kernel_gflops: flopsPerS / 1e9, peak_gflops: mostPerS / 1e9, peak_share: flopsPerS / mostPerS }
}
