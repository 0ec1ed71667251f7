import { describe, expect, it } from 'vitest'
import { checkLayout } from '../../../lib/day/check'
import { layOutDay } from '../../../lib/day/lay-out'
import { anyDay } from './any-day'

describe('any day at all', () => {
  it.each(Array.from({ length: 30 }, (_, i) => i + 1))(
    '%i: breaks no rule, and every shot is placed or explained',
    (seed) => {
      const { shoot, forecasts } = anyDay(seed)
      const layout = layOutDay(shoot, forecasts, { seed, sweeps: 8 })
      expect(checkLayout(shoot, layout, forecasts).map((v) => v.sentence)).toEqual([])
      expect(layout.shots.length + layout.dropped.length).toBe(shoot.shots?.length)
      for (const { why, wouldSave } of layout.dropped) expect(why.length * wouldSave.length).toBeGreaterThan(0)
    },
  )
})
