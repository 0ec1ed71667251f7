import { describe, expect, it } from 'vitest'
import { checkSentence } from '../../../lib/card/check-sentence'
import { topicLeftBy } from '../../../lib/card/read-claims'
import { sentencesOf } from '../../../lib/card/tokens'
import { writtenIntro, writtenSteps } from '../../../lib/card/write-steps'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { chance } from './made-up-forecast'
import { randomPlan } from './random-plan'

describe('written steps', () => {
  it('hold when they are read again, over the model’s own forecasts of 12 random plans', () => {
    const wrong: string[] = []
    for (let i = 0; i < 12; i++) {
      const { plan, cut } = randomPlan(chance(3000 + i))
      const forecast = forecastCook(plan, { seed: i, members: 64 })
      const card = { cook: 'hero', animal: cut.animal, boneShare: cut.boneShare, authority: 'US' }
      for (const step of [...writtenSteps(forecast, cut), { id: 'intro', text: writtenIntro(forecast) }]) {
        let before: ReturnType<typeof topicLeftBy> = null
        for (const sentence of sentencesOf(step.text)) {
          for (const c of checkSentence(sentence, { card, forecast, step: step.id, before }))
            if (!c.finding.startsWith('borne-out'))
              wrong.push(`${cut.id} "${sentence}" ${c.finding}: ${c.found} ${c.reason}`)
          before = topicLeftBy(sentence) ?? before
        }
      }
    }
    expect(wrong).toEqual([])
  })
})
