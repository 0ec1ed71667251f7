import { parseShoot } from '../../../lib/plan/parse'
import type { Shoot, ShootDocument } from '../../../lib/plan/shoot'

type Part = Record<string, unknown>
const at = (moment: string, before = '1 min', after = '2 min') => ({ at: { moment, before, after } })
const shot = (id: string, title: string, more: Part): Part => ({ id, title, setup: '5 min', ...more })

/** The fourteen shots a roast is covered with. */
export const FOURTEEN: Part[] = [
  shot('raw-beauty', 'Raw beauty', {
    free: true,
    state: 'raw',
    roll: '6 min',
    needs: ['camera', 'stylist'],
    place: 'bench',
    priority: 'should',
  }),
  shot('seasoning', 'Seasoning', {
    free: true,
    state: 'raw',
    roll: '5 min',
    needs: ['camera', 'presenter'],
    place: 'bench',
    priority: 'must',
    after: ['raw-beauty'],
  }),
  shot('lighting', 'Lighting the fire', {
    ...at('fire-lit'),
    needs: ['camera', 'presenter'],
    place: 'cooker',
    priority: 'must',
  }),
  shot('on', 'Meat on', {
    ...at('meat-on'),
    needs: ['camera', 'presenter'],
    place: 'cooker',
    lid: 'open',
    priority: 'must',
  }),
  shot('smoke', 'Smoke at the vent', {
    between: ['meat-on', 'pull'],
    roll: '4 min',
    needs: ['camera'],
    place: 'cooker',
    lid: 'shut',
    priority: 'should',
  }),
  shot('probe', 'Probe goes in', {
    ...at('probe-in'),
    needs: ['camera', 'presenter'],
    place: 'cooker',
    lid: 'open',
    priority: 'must',
  }),
  shot('turn', 'The turn', {
    ...at('turn'),
    needs: ['camera', 'presenter'],
    place: 'cooker',
    lid: 'open',
    priority: 'should',
  }),
  shot('display', 'The display at pull', {
    ...at('pull', '1 min', '1 min'),
    needs: ['camera'],
    place: 'cooker',
    priority: 'must',
  }),
  shot('vents', 'Vents open', {
    ...at('vents-open', '0 min', '1 min'),
    needs: ['camera', 'presenter'],
    place: 'cooker',
    priority: 'should',
  }),
  shot('sear', 'The sear', {
    ...at('sear-start', '0 min', '2 min'),
    needs: ['camera', 'presenter'],
    place: 'cooker',
    priority: 'must',
  }),
  shot('off', 'Off the heat', {
    ...at('off-heat', '0 min', '1 min'),
    needs: ['camera', 'presenter'],
    place: 'cooker',
    priority: 'must',
  }),
  shot('carryover', 'Carryover reading', {
    free: true,
    state: 'hot',
    setup: '2 min',
    roll: '2 min',
    needs: ['camera'],
    place: 'table',
    priority: 'should',
  }),
  shot('first-cut', 'First slice with sound', {
    ...at('first-slice', '1 min', '4 min'),
    needs: ['camera', 'presenter'],
    place: 'table',
    priority: 'must',
  }),
  shot('beauty', 'Sliced beauty', {
    free: true,
    state: 'sliced',
    roll: '6 min',
    needs: ['camera', 'stylist'],
    place: 'table',
    after: ['first-cut'],
    priority: 'should',
  }),
]

/** A whole shoot document; each test states the difference. */
export const gardenDocument = (change: Part = {}): ShootDocument => ({
  emberslate: 1,
  seed: 1,
  title: 'A test in the garden',
  date: '2027-05-15',
  zone: 'Europe/Dublin',
  place: { lat: 53.35, lon: -6.26 },
  cooks: [
    {
      id: 'hero',
      roast: { cut: 'pork-loin-bone-in', mass: '3.6 kg', start: '4 °C' },
      cooker: { kind: 'kettle-charcoal' },
      stages: [
        { do: 'preheat', at: '150 °C' },
        { do: 'roast', at: '150 °C', until: { core: '57 °C' }, turn: { at: 'half' }, probe: { at: 'turn' } },
        { do: 'sear', at: '300 °C', until: { core: '63 °C' }, max: '15 min' },
        { do: 'rest', until: { after: '15 min' }, max: '40 min' },
      ],
    },
  ],
  day: { slice: { at: '18:30' } },
  people: [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    { id: 'cam-1', roles: ['camera'] },
    { id: 'cam-2', roles: ['camera', 'sound'] },
    { id: 'stylist', roles: ['stylist'] },
  ],
  cameras: [{ id: 'A' }, { id: 'B' }],
  tasks: [
    {
      id: 'fire-watch',
      title: 'In sight of the fire',
      cook: 'hero',
      from: 'fire-lit',
      to: 'off-heat',
      needs: ['cook'],
    },
  ],
  shots: FOURTEEN,
  ...change,
})

export function gardenShoot(change: Part = {}): Shoot {
  const parsed = parseShoot(gardenDocument(change))
  if (!parsed.ok) throw new Error(parsed.problems.map((p) => `${p.pointer}: ${p.sentence}`).join('\n'))
  return parsed.value
}
