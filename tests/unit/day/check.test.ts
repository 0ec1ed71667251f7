import { describe, expect, it } from 'vitest'
import { checkLayout } from '../../../lib/day/check'
import { cleanDay } from './clean-day'

describe('the checker', () => {
  it('finds nothing on a clean day, with forecasts and without', () => {
    const { shoot, layout, forecasts } = cleanDay()
    expect(checkLayout(shoot, layout, forecasts)).toEqual([])
    expect(checkLayout(shoot, layout)).toEqual([])
  })
})
