import { describe, expect, test } from 'vitest'
import { interior, radialMesh, type SkinSide, stepInterior } from '../../../lib/model/conduction'

const still: SkinSide = { net_WpM2: 0, slope_WpM2K: 0, at() {} }
const inside = (exponent: number) => {
  const made = interior(radialMesh(exponent), 0.05)
  made.k.fill(0.45)
  made.c.fill(3.5e6)
  return made
}

describe('mesh', () => {
  test.each([0, 0.7, 1, 1.6, 2])('cells of exponent %s fill the shape: their volumes sum to 1/(n + 1)', (n) => {
    const { cell, place } = radialMesh(n)
    expect(cell.reduce((sum, v) => sum + v, 0)).toBeCloseTo(1 / (n + 1), 12)
    expect(place[0]).toBe(0)
    expect(place.at(-1)).toBe(1)
  })
  test('nodes crowd toward the skin', () => {
    const { place } = radialMesh(1)
    const gaps = [...place].slice(1).map((r, i) => r - (place[i] as number))
    expect(gaps).toEqual(gaps.toSorted((a, b) => b - a))
  })
})

describe('step', () => {
  test.each([2, 2.5, 3])('a core that is a degree off settles, also in a solid of exponent %s', (n) => {
    const made = inside(n)
    let nodesC = new Float64Array(20).fill(20)
    nodesC[0] = 21
    for (let step = 0; step < 40; step++) {
      const nextC = new Float64Array(20)
      stepInterior(made, nextC, nodesC, still, 25)
      nodesC = nextC
    }
    for (const tempC of nodesC) expect(Math.abs(tempC - 20)).toBeLessThan(0.01)
  })
  test('an even temperature under a skin that takes nothing stays to the last digit', () => {
    const nodesC = new Float64Array(20).fill(37.25)
    const nextC = new Float64Array(20)
    stepInterior(inside(1.3), nextC, nodesC, still, 30)
    expect(nextC).toEqual(nodesC)
  })
  test('an insulated roast keeps its heat while it evens out', () => {
    const made = inside(1.3)
    let nodesC = Float64Array.from({ length: 20 }, (_, i) => 20 + 3 * i)
    let nextC = nodesC.slice()
    const heat = (row: Float64Array) => row.reduce((sum, t, i) => sum + t * (made.mesh.cell[i] as number), 0)
    const before = heat(nodesC)
    for (let i = 0; i < 2000; i++) {
      stepInterior(made, nextC, nodesC, still, 30)
      ;[nodesC, nextC] = [nextC, nodesC]
    }
    expect(heat(nodesC)).toBeCloseTo(before, 8)
    expect(Math.max(...nodesC) - Math.min(...nodesC)).toBeLessThan(1e-3)
  })
  test('steps of a day are stable: after three the roast is at the temperature of its bath', () => {
    const bath: SkinSide = {
      net_WpM2: 0,
      slope_WpM2K: -500,
      at(skinC) {
        this.net_WpM2 = 500 * (60 - skinC)
      },
    }
    const made = inside(2)
    let nodesC = new Float64Array(20).fill(5)
    let nextC = nodesC.slice()
    for (let day = 0; day < 3; day++) {
      stepInterior(made, nextC, nodesC, bath, 86_400)
      ;[nodesC, nextC] = [nextC, nodesC]
    }
    for (const t of nodesC) expect(Math.abs(t - 60)).toBeLessThan(1)
  })
})
