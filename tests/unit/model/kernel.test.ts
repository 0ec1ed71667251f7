import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { BYTES_FILE, kernelModule } from '../../../lib/cli/assemble-kernel'
import { hasSimd, kernel } from '../../../lib/model/simd/kernel'
import * as layout from '../../../lib/model/simd/layout'

describe('the SIMD kernel', () => {
  it('has bytes that its source assembles to', async () => {
    expect(readFileSync(BYTES_FILE, 'utf8')).toBe(await kernelModule())
  })

  it('runs here, and its memory holds every lane', () => {
    expect(hasSimd()).toBe(true)
    const bytes = kernel().f32.byteLength
    expect(layout.SAMPLES_AT + layout.LANES * layout.LANE_SAMPLES).toBeLessThanOrEqual(bytes)
    expect(layout.NODES_AT + layout.MOST_NODES * layout.NODE).toBeLessThanOrEqual(layout.TABLE_AT)
    expect(layout.TABLE_AT + layout.MOST_ROWS * layout.TABLE_ROW).toBeLessThanOrEqual(layout.PATHS_AT)
    expect(layout.PATHS_AT + layout.LANES * layout.PATH).toBeLessThanOrEqual(layout.SAMPLES_AT)
  })
})
