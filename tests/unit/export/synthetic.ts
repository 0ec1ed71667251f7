import type { Layout } from '../../../lib/day/layout'
import type { CookPlan } from '../../../lib/model/cook'
import type { Forecast } from '../../../lib/model/forecast'
import type { MomentId } from '../../../lib/model/moment-ids'
import { parseShoot } from '../../../lib/plan/parse'
import type { Shoot } from '../../../lib/plan/shoot'
import {
  celsius,
  frac,
  type Instant,
  instant,
  kilograms,
  metres,
  metresPerSecond,
  minutes,
  seconds,
} from '../../../lib/units'
import { madeUpSlice } from '../made-up-slice'

/** A made-up ensemble with the shape of a real one: good for pictures, no physics in it. */
export interface Likely {
  readonly pullMin: number
  readonly searMin: number
  readonly restMin: number
  /** 5 to 95 % of the time to pull, min. */
  readonly widthMin: number
  /** Share of members in which the sear is never reached. */
  readonly fails: number
}
const LAMB: Likely = { pullMin: 153, searMin: 14, restMin: 25, widthMin: 65, fails: 0 }
const MEMBERS = 64

export const COOK: CookPlan = {
  id: 'hero',
  roast: { cut: 'lamb-leg-bone-in', mass: kilograms(3.2), start: celsius(4), thickness: metres(0.12) },
  cooker: { kind: 'kettle-charcoal' },
  stages: [
    { do: 'preheat', at: celsius(150) },
    {
      do: 'roast',
      at: celsius(150),
      until: { core: celsius(46) },
      turn: { at: 'half' },
      probe: { at: 'turn', lead: celsius(250) },
    },
    { do: 'sear', at: celsius(320), until: { core: celsius(52) }, max: minutes(15) },
    { do: 'rest', until: { after: minutes(15) }, max: minutes(40) },
  ],
  surroundings: { air: celsius(14), wind: metresPerSecond(3), humidity: frac(0.65), altitude: metres(20) },
  lidOpenings: [{ at: minutes(107), open: minutes(1) }],
}

/** Member m of the spread, −1 to 1 at the 5 and 95 % marks. */
const place = (m: number) => ((m + 0.5) / MEMBERS - 0.5) / 0.45
const each = (of: (m: number) => number) => Float64Array.from({ length: MEMBERS }, (_, m) => of(m))

export function syntheticForecast(change: Partial<Likely> = {}, cook: CookPlan = COOK): Forecast {
  const likely = { ...LAMB, ...change }
  const pull = (m: number) => likely.pullMin + (place(m) * likely.widthMin) / 2
  const sear = (m: number) => (m >= MEMBERS * (1 - likely.fails) ? Number.POSITIVE_INFINITY : pull(m) + 9)
  const off = (m: number) => sear(m) + likely.searMin + place(m) * 2
  const at = (of: (m: number) => number) => each((m) => of(m) * 60)
  const moments: Partial<Record<MomentId, Float64Array>> = {
    'fire-lit': at((m) => -65 + place(m) * 12),
    'cooker-steady': at((m) => -15 + place(m) * 3),
    'meat-on': at(() => 0),
    turn: at(() => likely.pullMin * 0.4),
    'probe-in': at(() => likely.pullMin * 0.4 + 1),
    pull: at(pull),
    'vents-open': at((m) => pull(m) + 2),
    'sear-start': at(sear),
    'off-heat': at(off),
    'carryover-peak': at((m) => off(m) + 21),
    'first-slice': at((m) => off(m) + likely.restMin),
  }
  return {
    modelVersion: 'synthetic',
    kernel: 'plain',
    seed: 1,
    members: MEMBERS,
    cook,
    moments,
    trace: traceOf(likely, pull, off),
    offHeat: { coreC: each(() => 49), probeC: each(() => 52) },
    atSlice: { coreC: each((m) => 53 + place(m) * 3), probeC: each((m) => 55 + place(m) * 3) },
    peakCoreC: each((m) => 56 + place(m) * 2),
    lossFrac: each((m) => 0.2 + place(m) * 0.04),
    lethalityLog: each((m) => 1.5 + place(m)),
    lethalityAt: each(() => 0),
    radial: { radiusM: 0.065, exponent: 1.2 },
    cutFace: faceOf(),
    slice: madeUpSlice(faceOf()),
    warnings: [],
  }
}

function traceOf(likely: Likely, pull: (m: number) => number, off: (m: number) => number): Forecast['trace'] {
  const [startS, stepS] = [-80 * 60, 60]
  const count = Math.round(80 + likely.pullMin + likely.widthMin + 90)
  const cells = { length: MEMBERS * count }
  const along = (of: (min: number, m: number) => number) =>
    Float32Array.from(cells, (_, k) => of((startS + (k % count) * stepS) / 60, Math.floor(k / count)))
  const probe = (min: number, m: number) => {
    if (min <= 0) return 4
    const u = min / pull(m)
    const end = Number.isFinite(off(m)) ? off(m) : pull(m) + 25
    const risen = 4 + 42 * u * u * (1.7 - 0.7 * u)
    return min > end ? 52 + 4 * (1 - Math.exp(-(min - end) / 15)) : Math.min(52, risen)
  }
  const cooker = (min: number, m: number) => {
    if (min < 0) return Math.min(150, 14 + 136 * Math.min(1, Math.max(0, (min + 65) / 45)))
    return min > pull(m) + 2 ? Math.min(320, 150 + (min - pull(m) - 2) * 28) : 150 + place(m) * 6
  }
  return {
    startS,
    stepS,
    count,
    cookerC: along(cooker),
    surfaceC: along((min, m) => probe(min, m) + 20),
    coreC: along((min, m) => probe(min, m) - 2),
    probeC: along(probe),
  }
}

function faceOf(): Forecast['cutFace'] {
  const depthM = Array.from({ length: 20 }, (_, i) => (i / 19) * 0.06)
  const peakC = depthM.map((d) => 55 + 60 * Math.exp(-d / 0.012))
  const share = (likely: number) => ({ low: frac(likely - 0.06), likely: frac(likely), high: frac(likely + 0.06) })
  return {
    thickness: metres(0.12),
    width: metres(0.17),
    depthM,
    peakC,
    slicedC: peakC.map((t) => Math.min(t, 70)),
    areaBelow: [
      { limitC: 58, share: share(0.2) },
      { limitC: 60, share: share(0.29) },
      { limitC: 65, share: share(0.43) },
      { limitC: 70, share: share(0.54) },
    ],
    bandDepth: [],
    shareAbove: [],
  }
}

export const PLACE = { lat: 53.35, lon: -6.26 }
export const ZONE = 'Europe/Dublin'
/** 17:12 at the walled garden. */
export const MEAT_ON: Instant = instant(Date.parse('2027-05-15T17:12:00+01:00'))
export const clock = (hhmm: string) => `2027-05-15T${hhmm}:00+01:00`
export const fromMeatOn = (min: number) => instant(MEAT_ON + seconds(min * 60) * 1000)

const AT = (moment: MomentId, title: string, id: string, needs: string[]) => ({
  id,
  title,
  at: { moment, before: '1 min', after: '2 min' },
  cook: 'hero',
  setup: '6 min',
  needs,
})
export function lambShoot(): Shoot {
  const parsed = parseShoot({
    emberslate: 1,
    seed: 1,
    title: 'Leg of lamb at the walled garden',
    date: '2027-05-15',
    zone: ZONE,
    place: { ...PLACE, name: 'Walled kitchen garden, north gate' },
    weather: { air: '14 °C', wind: '3 m/s', humidity: '65 %' },
    cooks: [
      {
        id: 'hero',
        roast: { cut: 'lamb-leg-bone-in', mass: '3.2 kg', start: '4 °C', thickness: '12 cm' },
        cooker: { kind: 'kettle-charcoal' },
        stages: [
          { do: 'preheat', at: '150 °C' },
          {
            do: 'roast',
            at: '150 °C',
            until: { core: '46 °C' },
            turn: { at: 'half' },
            probe: { at: 'turn', lead: '250 °C' },
          },
          { do: 'sear', at: '320 °C', until: { core: '52 °C' }, max: '15 min' },
          { do: 'rest', until: { after: '15 min' }, max: '40 min' },
        ],
      },
    ],
    day: { call: '15:00', wrap: '22:30' },
    people: [
      { id: 'presenter', roles: ['presenter', 'cook'] },
      { id: 'cam-1', roles: ['camera'] },
      { id: 'cam-2', roles: ['camera', 'sound'] },
      { id: 'stylist', roles: ['stylist'] },
    ],
    cameras: [{ id: 'A' }, { id: 'B' }],
    tasks: [{ id: 'fire-watch', title: 'In sight of the fire', from: 'fire-lit', to: 'off-heat', needs: ['cook'] }],
    shots: [
      { id: 'wall', title: 'Cooker and garden wall', free: true, setup: '6 min', roll: '15 min', needs: ['camera'] },
      {
        id: 'raw',
        title: 'Raw beauty',
        state: 'raw',
        cook: 'hero',
        free: true,
        setup: '6 min',
        roll: '15 min',
        needs: ['camera', 'stylist'],
      },
      AT('fire-lit', 'Lighting the fire', 'light', ['camera', 'presenter']),
      {
        id: 'why',
        title: 'Why 150 °C, to camera',
        free: true,
        setup: '4 min',
        roll: '21 min',
        needs: ['camera', 'presenter'],
      },
      AT('meat-on', 'Meat on the grate', 'on', ['camera', 'presenter', 'stylist']),
      {
        id: 'mint',
        title: 'Mint sauce',
        free: true,
        setup: '4 min',
        roll: '20 min',
        needs: ['camera', 'presenter', 'stylist'],
      },
      {
        id: 'carve',
        title: 'Carve rehearsal',
        free: true,
        setup: '4 min',
        roll: '18 min',
        needs: ['camera', 'presenter'],
      },
      AT('turn', 'Turn, probe goes in', 'turn', ['camera', 'presenter']),
      {
        id: 'smoke',
        title: 'Vent smoke, long lens',
        between: ['meat-on', 'pull'],
        cook: 'hero',
        setup: '5 min',
        roll: '14 min',
        needs: ['camera'],
      },
      {
        id: 'table',
        title: 'Table laid, garden light',
        free: true,
        setup: '6 min',
        roll: '22 min',
        needs: ['camera', 'stylist'],
      },
      AT('pull', 'Probe at 46 °C, close', 'probe', ['camera']),
      AT('vents-open', 'Vents open', 'vents', ['camera', 'presenter']),
      AT('sear-start', 'Sear', 'sear', ['camera', 'presenter']),
      AT('off-heat', 'Off the heat', 'off', ['camera', 'presenter']),
      AT('carryover-peak', 'Carryover reading', 'carry', ['camera']),
      AT('first-slice', 'First slice with sound', 'slice', ['camera', 'presenter', 'stylist']),
      {
        id: 'beauty',
        title: 'Sliced beauty',
        free: true,
        state: 'sliced',
        cook: 'hero',
        setup: '3 min',
        roll: '9 min',
        needs: ['camera', 'stylist'],
        after: ['slice'],
      },
    ],
  })
  if (!parsed.ok) throw new Error(parsed.problems.map((p) => `${p.pointer}: ${p.sentence}`).join('\n'))
  return parsed.value
}

type Placed = [id: string, setup: string, start: string, end: string, people: string, camera: string, live?: boolean]
const PLACED: readonly Placed[] = [
  ['wall', '15:20', '15:29', '15:44', 'cam-1', 'A'],
  ['raw', '15:40', '15:48', '16:03', 'cam-1 stylist', 'A'],
  ['light', '15:52', '16:06', '16:14', 'cam-1 cam-2 presenter', 'A B'],
  ['why', '16:37', '16:41', '17:02', 'cam-1 presenter', 'A'],
  ['on', '17:04', '17:11', '17:18', 'cam-1 cam-2 presenter stylist', 'A B'],
  ['mint', '17:24', '17:28', '17:48', 'cam-1 presenter stylist', 'A'],
  ['carve', '17:36', '17:40', '17:58', 'cam-2 presenter', 'B'],
  ['turn', '18:04', '18:12', '18:22', 'cam-1 cam-2 presenter', 'A B'],
  ['table', '19:04', '19:10', '19:32', 'cam-1 stylist', 'A', true],
  ['probe', '19:38', '19:44', '19:47', 'cam-2', 'B', true],
  ['vents', '19:40', '19:46', '19:49', 'cam-1 presenter', 'A', true],
  ['sear', '19:52', '19:53', '20:03', 'cam-1 cam-2 presenter', 'A B', true],
  ['off', '20:06', '20:07', '20:11', 'cam-1 presenter', 'A', true],
  ['carry', '20:24', '20:28', '20:31', 'cam-2', 'B', true],
  ['slice', '20:28', '20:32', '20:38', 'cam-1 cam-2 presenter stylist', 'A', true],
  ['beauty', '20:40', '20:43', '20:52', 'cam-2 stylist', 'B', true],
]
const CALLS: readonly [
  shot: string,
  moment: MomentId,
  window: string,
  trigger: number | null,
  follows: MomentId | null,
][] = [
  ['light', 'fire-lit', '15:55 16:07 16:20', null, null],
  ['on', 'meat-on', '17:12 17:12 17:12', null, null],
  ['turn', 'turn', '18:12 18:12 18:12', null, null],
  ['probe', 'pull', '19:16 19:45 20:21', 43, null],
  ['vents', 'vents-open', '19:18 19:47 20:23', 43, null],
  ['sear', 'sear-start', '19:24 19:54 20:31', null, 'vents-open'],
  ['off', 'off-heat', '19:35 20:08 20:46', 50, null],
  ['carry', 'carryover-peak', '19:56 20:29 21:06', null, 'off-heat'],
  ['slice', 'first-slice', '20:00 20:33 21:11', null, 'off-heat'],
]

export function lambLayout(): Layout {
  const shots = PLACED.map(([id, setup, start, end, people, camera, live]) => ({
    id,
    setupStart: clock(setup),
    start: clock(start),
    end: clock(end),
    people: people.split(' '),
    camera: camera.split(' '),
    hold: live ? ('tentative' as const) : ('hard' as const),
  }))
  const calls = CALLS.map(([shot, moment, window, trigger, follows]) => {
    const [early, likely, late] = window.split(' ').map(clock)
    const placed = shots.find((s) => s.id === shot)
    return {
      id: `call-${shot}`,
      for: shot,
      moment,
      cook: 'hero',
      standby: placed?.setupStart ?? null,
      window: { early: early ?? null, likely: likely ?? null, late: late ?? null },
      trigger: trigger === null ? null : { cook: 'hero', probe: trigger },
      follows: follows ? { moment: follows, after: minutes(6) } : null,
      people: placed?.people ?? [],
    }
  })
  return {
    start: clock('17:12'),
    meatOn: { hero: clock('17:12') },
    crewCall: clock('15:00'),
    wrap: clock('21:40'),
    shots,
    calls,
    tasks: [{ id: 'fire-watch', start: clock('16:07'), end: clock('20:08'), people: ['presenter'] }],
    meals: [{ start: clock('18:27'), end: clock('18:57'), people: ['presenter', 'cam-1', 'cam-2', 'stylist'] }],
    dropped: [
      { id: 'smoke', why: 'It would hold camera B until 19:24.', wouldSave: 'Shoot it at 17:22: costs nothing.' },
    ],
    conflicts: [],
    capture: { each: {}, joint: 0.93, openLoop: { each: {}, joint: 0.4 } },
  }
}
