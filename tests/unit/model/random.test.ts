import { expect, test } from 'vitest'
import { chanceOf } from '../../../lib/model/random'

const draws = (seed: number, member: number, stream: number, n = 4000) => {
  const { normal } = chanceOf(seed, member, stream)
  return Array.from({ length: n }, normal)
}
const mean = (x: number[]) => x.reduce((sum, v) => sum + v, 0) / x.length

test('a stream is its seed, member and number, and nothing else', () => {
  expect(draws(1, 2, 3, 10)).toEqual(draws(1, 2, 3, 10))
  for (const other of [draws(2, 2, 3, 10), draws(1, 3, 3, 10), draws(1, 2, 4, 10)])
    expect(other).not.toEqual(draws(1, 2, 3, 10))
})
test('draws are standard normal: mean and variance within four standard errors of 4,000', () => {
  const x = draws(1, 0, 0)
  expect(Math.abs(mean(x))).toBeLessThan(4 / Math.sqrt(4000))
  expect(Math.abs(mean(x.map((v) => v * v)) - 1)).toBeLessThan(4 * Math.sqrt(2 / 4000))
})
test('neighbouring members and seeds are unrelated', () => {
  const firsts = (of: (i: number) => number[]) => Array.from({ length: 2000 }, (_, i) => of(i)[0] as number)
  const members = firsts((m) => draws(7, m, 1, 1))
  const shifted = members.slice(1)
  expect(Math.abs(mean(shifted.map((v, i) => v * (members[i] as number))))).toBeLessThan(4 / Math.sqrt(2000))
  expect(Math.abs(mean(members))).toBeLessThan(4 / Math.sqrt(2000))
})
