import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { COOKER_KINDS, type CookerKind, type CookPlan, type Stage } from '../../lib/model/cook'
import { COOKERS } from '../../lib/model/cooker'
import { Cooker, type CookerMember, type CookerSite, KNOT_S } from '../../lib/model/cooker-path'
import { chanceOf } from '../../lib/model/random'
import { celsius, kilograms, metresPerSecond, minutes } from '../../lib/units'
import { centralRun, cookPlan } from './cooks'

const WITH_AIR = COOKER_KINDS.filter((kind) => kind !== 'water-bath')
const BURNING = COOKER_KINDS.filter((kind) => COOKERS[kind].fuel !== undefined)
const check = (runs: number) => ({ numRuns: runs, seed: 5 })
const kinds = fc.constantFrom<CookerKind>(...WITH_AIR)
const burning = fc.constantFrom<CookerKind>(...BURNING)

const member = (seed: number): CookerMember => ({
  levelK: 4,
  warmUpS: 1800,
  climbFactor: 1,
  lossFactor: 1,
  cyclePhase: 0.3,
  chance: chanceOf(seed, 0, 2),
})
const SITE: CookerSite = { airC: 15, windMpS: 2, direct: 0, fuelKg: Infinity, refuels: [] }
const cooker = (kind: CookerKind, seed = 1, site = SITE) => new Cooker(COOKERS[kind], member(seed), site, 150, false)

describe('path', () => {
  test('every kind reads without a jump over lid, sear and dousing, at any time asked for', () => {
    fc.assert(
      fc.property(kinds, fc.integer({ min: 1, max: 99 }), (kind, seed) => {
        const path = cooker(kind, seed)
        let before = path.readingC(0)
        for (let t = 1; t < 9000; t++) {
          if (t === 1801) path.lid(true, t)
          if (t === 1900) path.lid(false, t)
          if (t === 4003) path.aim(300, t, true)
          if (t === 7007) path.douse(t)
          const now = path.readingC(t)
          expect(Math.abs(now - before)).toBeLessThan(4)
          before = now
        }
      }),
      check(8),
    )
  })
  test('it is the same whatever times were asked for between its events', () => {
    fc.assert(
      fc.property(kinds, fc.array(fc.integer({ min: 0, max: 3600 }), { maxLength: 40 }), (kind, asked) => {
        const [often, seldom] = [cooker(kind), cooker(kind)]
        for (const t of asked.toSorted((a, b) => a - b)) often.readingC(t)
        for (const path of [often, seldom]) path.aim(200, 3600)
        for (let t = 3600; t < 7200; t += 7) expect(often.readingC(t)).toBe(seldom.readingC(t))
      }),
      check(20),
    )
  })
  test('its knots, from the last event on, are all there is to know of it', () => {
    const path = cooker('kettle-charcoal')
    path.aim(180, 777)
    path.readingC(2000)
    const often = cooker('kettle-charcoal')
    often.aim(180, 777)
    const [rows, again] = [new Float32Array(4 * 80), new Float32Array(4 * 80)]
    expect(path.copyKnots(rows, 0, 777, 80)).toBe(777)
    for (let i = 0; i < 80; i++) expect(rows[4 * i]).toBe(Math.fround(often.readingC(777 + i * KNOT_S)))
    // copied on from some time between, it is the same path
    expect(path.copyKnots(again, 0, 777 + 20.5 * KNOT_S, 80)).toBe(777 + 20 * KNOT_S)
    expect(again.slice(0, 4 * 60)).toEqual(rows.slice(4 * 20))
  })
  test('a thermostat swings about its set point by its habit', () => {
    const still = { ...member(1), levelK: 0, chance: { uniform: () => 0.5, normal: () => 0 } }
    const path = new Cooker(COOKERS.oven, still, { ...SITE, airC: 21 }, 150, false)
    const read = Array.from({ length: 3600 / KNOT_S }, (_, i) => path.readingC(i * KNOT_S))
    expect(Math.max(...read)).toBeCloseTo(150 + COOKERS.oven.cycleK, 0)
    expect(Math.min(...read)).toBeCloseTo(150 - COOKERS.oven.cycleK, 0)
  })
  test('with the vents open charcoal climbs from 150 to 305 °C in 8 to 15 min (common practice, no source)', () => {
    for (const kind of ['kettle-charcoal', 'ceramic-charcoal'] as const) {
      const calm = { ...member(1), levelK: 0, chance: { uniform: () => 0.5, normal: () => 0 } }
      const path = new Cooker(COOKERS[kind], calm, SITE, 150, false)
      path.aim(320, 0, true)
      const climbS = path.whenMet({ signal: 'cooker', levelC: 305, rising: true }, 0, 3600)
      expect(climbS / 60).toBeGreaterThan(8)
      expect(climbS / 60).toBeLessThan(15)
    }
  })
})

const windy = (plan: CookPlan, wind: number, fuel?: number): CookPlan => ({
  ...plan,
  surroundings: { ...plan.surroundings, wind: metresPerSecond(wind) },
  cooker: { ...plan.cooker, ...(fuel === undefined ? {} : { fuel: kilograms(fuel) }) },
})
const withCooker = (plan: CookPlan, more: Partial<CookPlan['cooker']>): CookPlan => ({
  ...plan,
  cooker: { ...plan.cooker, ...more },
})

describe('heat', () => {
  test('each kind brings the leg of lamb to its core', () => {
    for (const kind of COOKER_KINDS) {
      const run = centralRun(cookPlan({ kind, atC: kind === 'water-bath' ? 58 : 150, coreC: 52 }))
      expect(run.unfinished).toBeUndefined()
      expect(run.moments.pull).toBeLessThan(8 * 3600)
    }
  })
  test('a hotter cooker of any kind is never later', () => {
    fc.assert(
      fc.property(kinds, fc.integer({ min: 110, max: 200 }), fc.integer({ min: 2, max: 30 }), (kind, atC, more) => {
        const pull = (at: number) => centralRun(cookPlan({ kind, atC: at, kg: 2 })).moments.pull
        expect(pull(atC + more)).toBeLessThan(pull(atC))
      }),
      check(10),
    )
  })
  test('a bagged roast loses no water to the bath, only its juice', () => {
    const bath = centralRun(cookPlan({ kind: 'water-bath', atC: 58, coreC: 52 }))
    const oven = centralRun(cookPlan({ kind: 'oven', coreC: 52 }))
    expect(bath.lossFrac).toBeLessThan(oven.lossFrac / 2)
  })
  test('without a deflector it is sooner; bones beneath the meat take part of that away', () => {
    const gain = (cut: string) => {
      const plan = cookPlan({ cut, kg: 3 })
      return centralRun(withCooker(plan, { deflector: false })).moments.pull / centralRun(plan).moments.pull
    }
    expect(gain('beef-rib-boneless')).toBeLessThan(0.97)
    expect(gain('beef-rib-bone-in')).toBeLessThan(1)
    expect(gain('beef-rib-bone-in')).toBeGreaterThan(gain('beef-rib-boneless'))
  })
})

describe('fuel', () => {
  test('more wind never takes less fuel, and shelter never more', () => {
    fc.assert(
      fc.property(burning, fc.double({ min: 0, max: 10, noNaN: true }), (kind, wind) => {
        const plan = cookPlan({ kind, kg: 2, atC: 130 })
        const burnt = (mps: number) => centralRun(windy(plan, mps)).fuelKg
        expect(burnt(wind + 3)).toBeGreaterThan(burnt(wind))
        const sheltered = centralRun(withCooker(windy(plan, wind + 3), { sheltered: true })).fuelKg
        expect(sheltered).toBeLessThan(burnt(wind + 3))
      }),
      check(8),
    )
  })
  test('less fuel is never hotter, at any minute, and never sooner', () => {
    fc.assert(
      fc.property(burning, fc.double({ min: 0.2, max: 0.95, noNaN: true }), (kind, share) => {
        const plan = cookPlan({ kind, kg: 2, coreC: 60 })
        const needKg = centralRun(plan).fuelKg
        const [less, more] = [share * needKg, 1.3 * needKg].map((kg) => centralRun(windy(plan, 2, kg)))
        if (!less || !more) throw new RangeError('two runs')
        const minutesBoth = Math.min(less.moments.pull, more.moments.pull) / 60
        for (let i = 0; i < minutesBoth; i++)
          expect(less.trace.cookerC[i] as number).toBeLessThanOrEqual((more.trace.cookerC[i] as number) + 1e-9)
        expect(less.moments.pull).toBeGreaterThanOrEqual(more.moments.pull)
      }),
      check(10),
    )
  })
  test('a charge far too small never gets there, and fuel added in time does', () => {
    const plan = windy(cookPlan({ coreC: 60 }), 2, 0.8)
    const short = centralRun(plan)
    expect(short.unfinished).toBe(0)
    expect(short.ranOutS).toBeLessThan(7200)
    const fed = centralRun(withCooker(plan, { refuel: [{ at: minutes(30), add: kilograms(1) }] }))
    expect(fed.unfinished).toBeUndefined()
  })
  test('a charge is never burnt twice, and an opened lid costs fuel and time', () => {
    for (const kind of BURNING) {
      const plan = cookPlan({ kind, coreC: 60 })
      expect(centralRun(windy(plan, 2, 0.7)).fuelKg).toBeLessThanOrEqual(0.7 + 1e-6)
      const open = centralRun({ ...plan, lidOpenings: [{ at: minutes(40), open: minutes(5) }] })
      const shut = centralRun(plan)
      expect(open.fuelKg).toBeGreaterThan(shut.fuelKg)
      expect(open.moments.pull).toBeGreaterThan(shut.moments.pull)
    }
  })
  test('an oven burns none', () => {
    expect(centralRun(cookPlan({ kind: 'oven' })).fuelKg).toBe(0)
  })
})

const endingIn = (...after: Stage[]): CookPlan => {
  const plan = cookPlan({ coreC: 54 })
  return { ...plan, stages: [...plan.stages.slice(0, 2), ...after] }
}
const restFor = (min: number, more: Partial<Extract<Stage, { do: 'rest' }>> = {}): Stage => ({
  do: 'rest',
  until: { after: minutes(min) },
  ...more,
})
const holdFor = (min: number, more: Partial<Extract<Stage, { do: 'hold' }>>): Stage => ({
  do: 'hold',
  until: { after: minutes(min) },
  ...more,
})

describe('rest and hold', () => {
  const slicedSkinC = (plan: CookPlan) => centralRun(plan).slicedC.at(-1) as number
  test('a tent keeps the skin warmer than open air, a board warmer than a rack, still air warmer than wind', () => {
    expect(slicedSkinC(endingIn(restFor(40, { cover: 'tent' })))).toBeGreaterThan(
      slicedSkinC(endingIn(restFor(40))) + 3,
    )
    expect(slicedSkinC(endingIn(restFor(40, { on: 'board' })))).toBeGreaterThan(slicedSkinC(endingIn(restFor(40))))
    const plan = endingIn(restFor(40))
    expect(slicedSkinC(windy(plan, 0))).toBeGreaterThan(slicedSkinC(windy(plan, 6)))
  })
  test('the first slice is the end of a hold after the rest, and of a rest after a hold', () => {
    for (const after of [
      [restFor(20), holdFor(60, { in: 'box' })],
      [holdFor(60, { in: 'oven', at: celsius(65) }), restFor(20)],
      [restFor(20), holdFor(60, { at: celsius(70) })],
    ]) {
      const { moments } = centralRun(endingIn(...after))
      expect((moments['first-slice'] - moments.pull) / 60).toBeCloseTo(80, 6)
      expect(moments['off-heat']).toBeGreaterThanOrEqual(moments.pull)
    }
  })
  test('a box without heat keeps a roast warmer than a board does, and cooler than a warm oven', () => {
    const [board, box, oven] = [
      restFor(180),
      holdFor(180, { in: 'box' }),
      holdFor(180, { in: 'oven', at: celsius(70) }),
    ].map((stage) => centralRun(endingIn(restFor(10), stage)).atSlice.coreC)
    expect(board).toBeLessThan(box as number)
    expect(box).toBeLessThan(oven as number)
  })
  test('a wrapped shoulder of 4 kg at 92 °C stays above 60 °C in a box for three hours or more (common practice, no source)', () => {
    const plan = cookPlan({ cut: 'pork-shoulder-boneless', kg: 4, atC: 130, coreC: 92 })
    const run = centralRun({ ...plan, stages: [...plan.stages.slice(0, 2), holdFor(180, { in: 'box' })] })
    expect(run.atSlice.coreC).toBeGreaterThan(60)
    expect(run.atSlice.coreC).toBeLessThan(85)
  })
  test('a fire choked to 70 °C holds a roast that a rest would cool', () => {
    const choked = centralRun(endingIn(holdFor(120, { at: celsius(70) })))
    expect(choked.trace.cookerC.at(-1)).toBeDefined()
    expect(choked.atSlice.coreC).toBeGreaterThan(60)
    expect(choked.fuelKg).toBeGreaterThan(centralRun(endingIn(restFor(120))).fuelKg)
  })
  test('a sear over direct heat begins as soon as the meat is carried there', () => {
    const bath = cookPlan({ kind: 'water-bath', atC: 58, coreC: 54 })
    const sear: Stage = { do: 'sear', at: celsius(250), until: { after: minutes(4) }, over: 'direct' }
    const run = centralRun({ ...bath, stages: [...bath.stages.slice(0, 2), sear, restFor(5)] })
    expect(run.moments['sear-start'] - run.moments.pull).toBeLessThan(300)
    expect(run.moments['off-heat'] - run.moments['sear-start']).toBeCloseTo(240, 6)
    expect(Math.max(...run.peakC)).toBeGreaterThan(70)
  })
})
