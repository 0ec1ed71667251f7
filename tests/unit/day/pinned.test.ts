import { describe, expect, it } from 'vitest'
import { checkLayout } from '../../../lib/day/check'
import { layOutDay } from '../../../lib/day/lay-out'
import { withEdits } from '../../../lib/plan/edit'
import { parseShoot } from '../../../lib/plan/parse'
import type { ShootDocument } from '../../../lib/plan/shoot'
import { FOURTEEN, gardenDocument } from './garden-shoot'
import { syntheticForecast } from './synthetic-forecast'

const forecasts = new Map([['hero', syntheticForecast('hero', { members: 256, seed: 1 })]])
function lay(document: ShootDocument) {
  const parsed = parseShoot(document)
  if (!parsed.ok) throw new Error(parsed.problems[0]?.sentence)
  const layout = layOutDay(parsed.value, forecasts, { seed: 1, sweeps: 40 })
  return { layout, broken: checkLayout(parsed.value, layout, forecasts).map((v) => v.sentence) }
}
const pinned = (id: string, pin: string) =>
  gardenDocument({ shots: FOURTEEN.map((shot) => (shot.id === id ? { ...shot, pin } : shot)) })
const startOf = ({ layout }: ReturnType<typeof lay>, id: string) =>
  layout.shots.find((s) => s.id === id)?.start.slice(11, 16)

describe('a pinned shot', () => {
  it('rolls from its minute on, wherever it would have stood, and breaks no rule', () => {
    const free = startOf(lay(gardenDocument()), 'smoke')
    for (const pin of ['16:40', '17:25', '17:35']) {
      expect(pin).not.toBe(free)
      const day = lay(pinned('smoke', pin))
      expect(startOf(day, 'smoke')).toBe(pin)
      expect(day.broken).toEqual([])
    }
  })
  it('is dropped where it cannot be had then, with the reason, and letting go of its time saves it', () => {
    const document = pinned('smoke', '13:00')
    const { layout, broken } = lay(document)
    expect(broken).toEqual([])
    const [drop] = layout.dropped
    expect(drop).toMatchObject({ id: 'smoke', edits: [{ value: null }] })
    expect(drop?.why).toMatch(
      /^It is pinned at 13:00, and all that it asks for is there from \d\d:\d\d to \d\d:\d\d alone\.$/,
    )
    expect(lay(withEdits(document, drop?.edits ?? [])).layout.dropped).toEqual([])
  })
})

describe('the change that would save a dropped shot', () => {
  it('is told as edits of the shoot file that read and do save it', () => {
    const people = [
      { id: 'presenter', roles: ['presenter', 'cook'] },
      { id: 'cam-1', roles: ['camera'] },
      { id: 'stylist', roles: ['stylist'] },
    ]
    const document = gardenDocument({ people, cameras: [{ id: 'A' }] })
    const { layout } = lay(document)
    const able = layout.dropped.filter(({ edits }) => edits)
    expect(able.length).toBeGreaterThan(0)
    for (const { id, edits = [] } of able) expect(startOf(lay(withEdits(document, edits)), id)).toBeDefined()
  })
})
