import { describe, expect, it } from 'vitest'
import { checkLayout } from '../../../lib/day/check'
import { readLayout } from '../../../lib/day/check/read-layout'
import { cleanDay } from './clean-day'

describe('a layout from a file', () => {
  it('comes back as it was written', () => {
    const { shoot, layout } = cleanDay()
    expect(readLayout(JSON.parse(JSON.stringify(layout)), shoot)).toEqual({ ok: true, value: layout })
  })
  it('is completed from the shoot where it is in the short form', () => {
    const { shoot, layout, forecasts } = cleanDay()
    const { meatOn: _, crewCall: __, ...short } = JSON.parse(JSON.stringify(layout))
    for (const call of short.calls) {
      delete call.moment
      delete call.cook
    }
    for (const shot of short.shots.filter((s: { id: string }) => s.id !== 'sear')) {
      delete shot.setupStart
      if (shot.camera.length === 1) shot.camera = shot.camera[0]
    }
    const read = readLayout(short, shoot)
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    expect(read.value.meatOn).toEqual({ hero: layout.start })
    expect(checkLayout(shoot, read.value, forecasts)).toEqual([])
  })
  it('is refused with the place and a sentence where it is no layout', () => {
    const { shoot, layout } = cleanDay()
    const broken = { ...layout, shots: [{ ...layout.shots[0], people: 'cam-1' }] }
    const read = readLayout(broken, shoot)
    expect(read.ok ? [] : read.problems.map((p) => p.pointer)).toEqual(['/shots/0/people'])
    expect(readLayout(null, shoot).ok).toBe(false)
  })
})
