import { describe, expect, it } from 'vitest'
import { checkSentence } from '../../../lib/card/check-sentence'
import type { CheckedClaim } from '../../../lib/card/claim'
import { cutById } from '../../../lib/model/cuts'
import { chance, madeUpForecast } from './made-up-forecast'
import { CHECKABLE, pairFor } from './sayings'

const PLANS = 50
const CUTS = ['lamb-leg-bone-in', 'beef-rib-bone-in', 'pork-loin-bone-in', 'beef-top-round', 'pork-leg-bone-in']

const plans = Array.from({ length: PLANS }, (_, i) => {
  const random = chance(1000 + i)
  const made = {
    roastMin: 60 + random() * 240,
    pull: 44 + Math.round(random() * 14),
    slicedC: 46 + random() * 30,
    cut: CUTS[i % CUTS.length] ?? 'lamb-leg-bone-in',
    restMin: 10 + Math.round(random() * 30),
    spread: 0.3 + random() * 2,
  }
  const forecast = madeUpForecast(made, i)
  const cut = cutById(made.cut)
  if (!cut) throw new RangeError(`no cut ${made.cut}`)
  return { forecast, random, context: { cook: 'hero', animal: cut.animal, boneShare: cut.boneShare, authority: 'US' } }
})

describe('true and false sentences over 50 random plans', () => {
  it.each(CHECKABLE)(
    '%s: what is inside is never contradicted, what is two widths off always, with its figure',
    (kind) => {
      let tried = 0
      for (const { forecast, random, context } of plans) {
        const pair = pairFor(forecast, kind, context, random)
        if (!pair) continue
        tried++
        const check = (sentence: string): CheckedClaim[] =>
          checkSentence(sentence, { card: context, forecast, step: 's', before: null }).filter((c) => c.kind === kind)
        const [right] = check(pair.right.sentence)
        const [wrong] = check(pair.wrong.sentence)
        expect(right, pair.right.sentence).toBeDefined()
        expect(right?.finding, `${pair.right.sentence} ${right?.found}`).toMatch(/^borne-out/)
        expect(wrong?.finding, `${pair.wrong.sentence} ${wrong?.found}`).toBe('contradicted')
        expect(wrong?.figure, pair.wrong.sentence).not.toBeNull()
        expect(wrong?.trueSentence, pair.wrong.sentence).toBeTruthy()
        const mended = checkSentence(wrong?.trueSentence ?? '', { card: context, forecast, step: 's', before: null })
        expect(mended.filter((c) => c.finding === 'contradicted').map((c) => `${c.sentence} ${c.found}`)).toEqual([])
      }

      // Near a border no word of doneness is two windows off, and neither sentence of safety is false.
      expect(tried).toBeGreaterThanOrEqual(kind === 'doneness' ? 30 : kind === 'safety' ? 40 : PLANS)
    },
  )
})
