import { describe, expect, it } from 'vitest'
import { cutById } from '../../lib/model/cuts'
import { BONES, boneRatios } from './bone-3d'

/**
 * What the place of the bone does to the time of the coldest point, against bone mixed evenly into the meat, which is what the
 * model has: a known limit, so what is kept here is its size. Lamb leg and shoulder and the beef rib, at 45, 60 and 75 °C.
 */
const LEVELS_C = [45, 60, 75]
const CUTS = ['lamb-leg-bone-in', 'lamb-shoulder-bone-in', 'beef-rib-bone-in']
const MEASURED = CUTS.flatMap((id) =>
  Object.entries(BONES).map(([name, bone]) => {
    const cut = cutById(id)
    if (!cut) throw new RangeError(id)
    const ratios = boneRatios(cut, bone, LEVELS_C)
    const words = ratios.map((r) => `${r > 1 ? '+' : ''}${(100 * (r - 1)).toFixed(1)} %`).join(', ')
    return { id, name, ratios, words }
  }),
)
const told = (name: string) =>
  MEASURED.filter((m) => m.name === name).map((m) => [`${m.id}, ${m.words}`, m.ratios] as const)

describe('bone in its place, time over that of the mixture at 45, 60 and 75 °C', () => {
  for (const name of Object.keys(BONES))
    describe(`bone ${name}`, () => {
      it.each(told(name))('%s', (_, ratios) => {
        for (const ratio of ratios) expect(Math.abs(Math.log(ratio))).toBeLessThan(0.075)
      })
    })
})
