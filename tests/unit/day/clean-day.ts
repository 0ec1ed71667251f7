import type { Layout } from '../../../lib/day/layout'
import type { Forecast } from '../../../lib/model/forecast'
import type { MomentId } from '../../../lib/model/moment-ids'
import { parseShoot } from '../../../lib/plan/parse'
import type { Shoot } from '../../../lib/plan/shoot'

/**
 * A day laid out by hand that breaks no rule, with a forecast drawn by ruler: pull 120 ± 10 min after meat-on,
 * the sear 8 min later, off the heat 15 min after pull, first slice 20 min after that; the probe climbs straight to 46 °C.
 */
export interface CleanDay {
  shoot: Shoot
  layout: Writable<Layout>
  forecasts: Map<string, Forecast>
}
export type Writable<T> = T extends string | number | boolean | null ? T : { -readonly [K in keyof T]: Writable<T[K]> }

const DOCUMENT = {
  emberslate: 1,
  title: 'A day by hand',
  date: '2027-05-15',
  zone: 'Europe/Dublin',
  place: { lat: 53.35, lon: -6.26 },
  cooks: [
    {
      id: 'hero',
      roast: { cut: 'lamb-leg-bone-in', mass: '3.2 kg', start: '4 °C' },
      cooker: { kind: 'kettle-charcoal' },
      stages: [
        { do: 'preheat', at: '150 °C' },
        { do: 'roast', at: '150 °C', until: { core: '46 °C' }, probe: { at: '60 min' } },
        { do: 'sear', at: '320 °C', until: { after: '7 min' } },
        { do: 'rest', until: { after: '20 min' } },
      ],
    },
  ],
  day: { call: '14:00', wrap: '22:30', slice: { in: 'golden-hour' } },
  people: [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    { id: 'cam-1', roles: ['camera'] },
    { id: 'cam-2', roles: ['camera', 'sound'] },
    { id: 'stylist', roles: ['stylist'] },
  ],
  cameras: [{ id: 'A' }, { id: 'B' }],
  tasks: [
    { id: 'fire-watch', title: 'In sight of the fire', from: 'fire-lit', to: 'off-heat', needs: ['cook'] },
    { id: 'ash-watch', title: 'Until it is out', from: 'off-heat', to: 'first-slice', needs: ['camera'] },
    {
      id: 'vent-check',
      title: 'Vents',
      from: 'meat-on',
      to: 'pull',
      delay: '30 min',
      takes: '2 min',
      every: '40 min',
      needs: ['cook'],
    },
    { id: 'plates', title: 'Plates and cloths', from: '15:30', to: '15:45', needs: ['stylist'] },
  ],
  shots: [
    shot('raw', {
      free: true,
      state: 'raw',
      setup: '8 min',
      roll: '6 min',
      needs: ['camera', 'stylist'],
      place: 'bench',
      priority: 'must',
    }),
    shot('seasoning', {
      free: true,
      setup: '5 min',
      roll: '6 min',
      needs: ['camera', 'presenter'],
      place: 'bench',
      after: ['raw'],
    }),
    shot('seasoned', {
      free: true,
      state: 'seasoned',
      setup: '5 min',
      roll: '4 min',
      needs: ['camera'],
      place: 'bench',
    }),
    shot('bread', { free: true, setup: '5 min', roll: '4 min', needs: ['camera', 'camera'], place: 'table' }),
    shot('lighting', {
      between: ['fire-lit', 'meat-on'],
      setup: '5 min',
      roll: '6 min',
      needs: ['camera'],
      place: 'cooker',
      priority: 'must',
    }),
    shot('wide', { from: 'meat-on', to: 'off-heat', locked: true, camera: 'B', setup: '8 min', place: 'cooker' }),
    shot('smoke', {
      between: ['meat-on', 'pull'],
      setup: '5 min',
      roll: '4 min',
      needs: ['camera'],
      place: 'cooker',
      lid: 'shut',
    }),
    shot('probe', {
      at: { moment: 'probe-in', before: '1 min', after: '2 min' },
      setup: '6 min',
      needs: ['camera', 'presenter'],
      place: 'cooker',
      lid: 'open',
      priority: 'must',
    }),
    shot('pull', {
      at: { moment: 'pull', before: '1 min', after: '3 min' },
      setup: '8 min',
      needs: ['camera'],
      place: 'cooker',
      priority: 'must',
    }),
    shot('sear', {
      at: { moment: 'sear-start', before: '1 min', after: '2 min' },
      setup: '5 min',
      needs: ['camera'],
      place: 'cooker',
    }),
    shot('hot', {
      free: true,
      state: 'hot',
      setup: '3 min',
      roll: '3 min',
      needs: ['camera', 'stylist'],
      place: 'table',
    }),
    shot('first-cut', {
      at: { moment: 'first-slice', before: '1 min', after: '4 min' },
      setup: '8 min',
      needs: ['camera', 'presenter'],
      place: 'table',
      priority: 'must',
    }),
    shot('beauty', {
      light: 'golden-hour',
      state: 'sliced',
      setup: '6 min',
      roll: '8 min',
      needs: ['camera', 'stylist'],
      place: 'table',
      after: ['first-cut'],
    }),
    shot('herbs', {
      free: true,
      setup: '8 min',
      roll: '6 min',
      needs: ['camera', 'stylist'],
      place: 'bench',
      priority: 'could',
    }),
  ],
}
function shot(id: string, rest: object) {
  return { id, title: `Shot ${id}`, cook: 'hero', ...rest }
}

/** "14:05" on the day, as the layout writes it. */
export const at = (clock: string) => `2027-05-15T${clock}+01:00`

const placed = (
  id: string,
  setup: string,
  start: string,
  end: string,
  people: string[],
  camera: string[],
  hold: 'hard' | 'tentative',
) => ({
  id,
  setupStart: at(setup),
  start: at(start),
  end: at(end),
  people,
  camera,
  hold,
})
const window = (early: string, likely: string, late: string) => ({
  early: at(early),
  likely: at(likely),
  late: at(late),
})

const LAYOUT: Layout = {
  start: at('18:05'),
  meatOn: { hero: at('18:05') },
  crewCall: at('14:00'),
  wrap: at('21:30'),
  shots: [
    placed('raw', '14:10', '14:18', '14:25', ['cam-1', 'stylist'], ['A'], 'hard'),
    placed('seasoning', '14:30', '14:35', '14:42', ['cam-1', 'presenter'], ['A'], 'hard'),
    placed('seasoned', '14:50', '14:55', '15:00', ['cam-1'], ['A'], 'tentative'),
    placed('bread', '15:10', '15:15', '15:20', ['cam-1', 'cam-2'], ['A', 'B'], 'hard'),
    placed('lighting', '17:30', '17:35', '17:42', ['cam-2'], ['B'], 'tentative'),
    placed('wide', '17:55', '18:05', '20:20', ['cam-2'], ['B'], 'hard'),
    placed('smoke', '18:20', '18:25', '18:30', ['cam-1'], ['A'], 'tentative'),
    placed('probe', '18:58', '19:04', '19:07', ['cam-1', 'presenter'], ['A'], 'hard'),
    placed('pull', '19:56', '20:04', '20:08', ['cam-1'], ['A'], 'hard'),
    placed('sear', '20:11', '20:12', '20:15', ['cam-1'], ['A'], 'hard'),
    placed('hot', '20:21', '20:24', '20:28', ['cam-2', 'stylist'], ['B'], 'tentative'),
    placed('first-cut', '20:31', '20:39', '20:44', ['cam-1', 'presenter'], ['A'], 'hard'),
    placed('beauty', '20:44', '20:50', '20:59', ['cam-1', 'stylist'], ['A'], 'tentative'),
  ],
  calls: [
    call('probe', 'probe-in', '18:58', window('19:05', '19:05', '19:05'), ['cam-1', 'presenter'], {}),
    call('pull', 'pull', '19:56', window('19:56', '20:05', '20:14'), ['cam-1'], {
      trigger: { cook: 'hero', probe: 36 },
    }),
    call('sear', 'sear-start', '20:11', window('20:04', '20:13', '20:22'), ['cam-1'], {
      trigger: { cook: 'hero', probe: 38 },
    }),
    call('first-cut', 'first-slice', '20:31', window('20:31', '20:40', '20:49'), ['cam-1', 'presenter'], {
      follows: { moment: 'pull', after: 600 as never },
    }),
  ],
  tasks: [
    { id: 'fire-watch', start: at('17:20'), end: at('20:20'), people: ['presenter'] },
    { id: 'ash-watch', start: at('20:20'), end: at('20:30'), people: ['cam-1'] },
    { id: 'ash-watch', start: at('20:30'), end: at('20:40'), people: ['cam-2'] },
    { id: 'vent-check', start: at('18:35'), end: at('18:37'), people: ['presenter'] },
    { id: 'vent-check', start: at('19:15'), end: at('19:17'), people: ['presenter'] },
    { id: 'vent-check', start: at('19:55'), end: at('19:57'), people: ['presenter'] },
    { id: 'plates', start: at('15:30'), end: at('15:45'), people: ['stylist'] },
  ],
  meals: [{ start: at('16:30'), end: at('17:00'), people: ['presenter', 'cam-1', 'cam-2', 'stylist'] }],
  dropped: [{ id: 'herbs', why: 'Nobody is free for it.', wouldSave: 'Call the crew 20 min sooner.' }],
  conflicts: [],
  capture: {
    each: { 'hero/probe-in': 0.99, 'hero/pull': 0.98, 'hero/sear-start': 0.97, 'hero/first-slice': 0.98 },
    joint: 0.95,
    openLoop: {
      each: { 'hero/probe-in': 0.99, 'hero/pull': 0.1, 'hero/sear-start': 0.1, 'hero/first-slice': 0.1 },
      joint: 0.1,
    },
  },
}
function call(
  id: string,
  moment: MomentId,
  standby: string,
  around: Layout['calls'][number]['window'],
  people: string[],
  by: Partial<Layout['calls'][number]>,
): Layout['calls'][number] {
  return {
    id: `call-${id}`,
    for: id,
    moment,
    cook: 'hero',
    standby: at(standby),
    window: around,
    trigger: null,
    follows: null,
    people,
    ...by,
  }
}

const MEMBERS = 101
const STEP_S = 60
const FROM_S = -3600
const COUNT = 300
const PROBE = { startC: 4, pullC: 46 }

function forecast(shoot: Shoot): Forecast {
  const minutes = (of: (u: number) => number) =>
    Float64Array.from({ length: MEMBERS }, (_, m) => 60 * of((m - 50) / 50))
  const pull = (u: number) => 120 + 10 * u
  const probeC = new Float32Array(MEMBERS * COUNT)
  for (let m = 0; m < MEMBERS; m++)
    for (let i = 0; i < COUNT; i++) {
      const t = Math.max(0, FROM_S + i * STEP_S) / 60
      probeC[m * COUNT + i] = PROBE.startC + ((PROBE.pullC - PROBE.startC) * t) / pull((m - 50) / 50)
    }
  const moments = {
    'fire-lit': minutes((u) => -45 + 5 * u),
    'cooker-steady': minutes((u) => -10 + 3 * u),
    'meat-on': minutes(() => 0),
    'probe-in': minutes(() => 60),
    pull: minutes(pull),
    'vents-open': minutes((u) => pull(u) + 1),
    'sear-start': minutes((u) => pull(u) + 8),
    'off-heat': minutes((u) => pull(u) + 15),
    'carryover-peak': minutes((u) => pull(u) + 45),
    'first-slice': minutes((u) => pull(u) + 35),
  }
  const same = new Float64Array(MEMBERS)
  const column = new Float32Array(MEMBERS * COUNT)
  return {
    modelVersion: 'by-hand',
    kernel: 'plain',
    seed: 1,
    members: MEMBERS,
    cook: { ...shoot.cooks[0], surroundings: {}, lidOpenings: [] } as never,
    moments,
    trace: { startS: FROM_S, stepS: STEP_S, count: COUNT, cookerC: column, surfaceC: column, coreC: column, probeC },
    offHeat: { coreC: same, probeC: same },
    atSlice: { coreC: same, probeC: same },
    peakCoreC: same,
    lossFrac: same,
    lethalityLog: same,
    lethalityAt: same,
    radial: { radiusM: 0.065, exponent: 1.2 },
    cutFace: {} as never,
    slice: {} as never,
    warnings: [],
  }
}

export function cleanDay(): CleanDay {
  const parsed = parseShoot(structuredClone(DOCUMENT))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  return {
    shoot: parsed.value,
    layout: structuredClone(LAYOUT) as Writable<Layout>,
    forecasts: new Map([['hero', forecast(parsed.value)]]),
  }
}
