import { describe, expect, it } from 'vitest'
import { COOKER_KINDS } from '../../../lib/model/cook'
import { CUTS, cutById } from '../../../lib/model/cuts'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { fastestKernel } from '../../../lib/model/kernels'
import { minimumFor } from '../../../lib/model/minimums'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { documentWarnings } from '../../../lib/plan/document-warnings'
import { setAt, valueAt } from '../../../lib/plan/edit'
import { followed, howDoneAt, withHowDone } from '../../../lib/plan/follow-answers'
import { type DoneCut, doneChoices, usualDone } from '../../../lib/plan/how-done'
import { startingShoot, withCoverage } from '../../../lib/plan/new-shoot'
import { startingStages } from '../../../lib/plan/starting-cook'
import { readQuantity } from '../../../lib/units'
import { faults, read } from './shoots'

const AROUND = { title: 'A day', date: '2027-05-15', zone: 'Europe/Dublin', place: { lat: 53.35, lon: -6.26 } }
const lamb = () => startingShoot({ ...AROUND, cut: 'lamb-leg-bone-in', cooker: 'kettle-charcoal' })
const change = (document: ReturnType<typeof lamb>, at: string, value: string) =>
  followed(document, setAt(document, at, value), 0)
const core = (document: unknown, stage: number) => valueAt(document, `/cooks/0/stages/${stage}/until/core`)

describe('how done a cut may be wanted', () => {
  it('is told of a bird by the authority’s minimum, and never aims below it in either unit', () => {
    for (const cut of CUTS.filter(({ animal }) => ['turkey', 'chicken', 'duck', 'goose'].includes(animal)))
      for (const { id } of doneChoices(cut))
        for (const units of ['metric', 'us'] as const)
          for (const cooker of COOKER_KINDS) {
            const roast = startingStages({ cut, cooker, done: id }, units).find((stage) => stage.do === 'roast')
            const aim = readQuantity(valueAt(roast, '/until/core'), 'temperature')
            expect(aim.ok && aim.si).toBeGreaterThanOrEqual(minimumFor(cut).tempC - 1e-9)
          }
    expect(doneChoices(cutById('turkey-whole') as DoneCut)[0]?.words).toBe('74 °C, the authority’s minimum')
  })

  it('reads back as it was chosen, for every cut and choice', () => {
    for (const cut of CUTS)
      for (const { id } of doneChoices(cut)) {
        const document = startingShoot({ ...AROUND, cut: cut.id, cooker: 'kettle-charcoal', done: id })
        expect([cut.id, howDoneAt(document, 0)]).toEqual([cut.id, id])
      }
  })

  it('gives a plan that reads, for every cut in every cooker', () => {
    for (const cut of CUTS)
      for (const cooker of COOKER_KINDS) expect(faults(startingShoot({ ...AROUND, cut: cut.id, cooker }))).toEqual([])
  })

  it('comes out of the forecast as the word says', () => {
    const disagree = [
      ['lamb-leg-bone-in', 'kettle-charcoal', 'medium-rare'],
      ['lamb-rack', 'oven', 'rare'],
      ['beef-top-round', 'kettle-charcoal', 'medium'],
      ['beef-rib-boneless', 'oven', 'medium-rare'],
      ['pork-leg-bone-in', 'kettle-charcoal', 'well-done'],
      ['beef-tenderloin', 'water-bath', 'medium-rare'],
    ].filter(([cut = '', cooker, done]) => {
      const shoot = read(startingShoot({ ...AROUND, cut, cooker, done } as Parameters<typeof startingShoot>[0]))
      const options = { seed: 1, members: 32, kernel: fastestKernel() }
      const forecasts = new Map(shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), options)]))
      return documentWarnings(shoot, forecasts).some(({ code }) => code === 'target-disagrees')
    })
    expect(disagree).toEqual([])
  })
})

describe('a plan whose answers change', () => {
  it('takes the heat, the targets and the weight of the new cut, and keeps what was typed', () => {
    const typed = setAt(lamb(), '/cooks/0/stages/3/until/after', '25 min')
    const turkey = change(typed, '/cooks/0/roast/cut', 'turkey-whole')
    expect(core(turkey, 1)).toBe('74 °C')
    expect(valueAt(turkey, '/cooks/0/roast/mass')).toBe('5.9 kg')
    expect(valueAt(turkey, '/cooks/0/stages/1/at')).toBe('165 °C')
    expect(valueAt(turkey, '/cooks/0/stages/2')).toMatchObject({ do: 'rest', until: { after: '25 min' } })
    expect(valueAt(turkey, '/cooks/0/target')).toBeUndefined()
    expect(faults(withCoverage(turkey))).toEqual([])
  })

  it('never carries the targets of one animal to another, typed or not', () => {
    const typed = setAt(lamb(), '/cooks/0/stages/1/until/core', '40 °C')
    expect(core(change(typed, '/cooks/0/roast/cut', 'chicken-whole'), 1)).toBe('74 °C')
  })

  it('loses a sear that the new cooker cannot reach, and gets it back', () => {
    const inOven = change(lamb(), '/cooks/0/cooker/kind', 'oven')
    const stages = (document: unknown) => (valueAt(document, '/cooks/0/stages') as { do: string }[]).map((s) => s.do)
    expect(stages(inOven)).toEqual(['preheat', 'roast', 'rest'])
    expect(change(inOven, '/cooks/0/cooker/kind', 'kettle-charcoal')).toEqual(lamb())
  })

  it('keeps a stage that somebody added, and leaves out one that was taken out', () => {
    const held = setAt(lamb(), '/cooks/0/stages/-', { do: 'hold', in: 'box', until: { after: '60 min' } })
    const oven = change(held, '/cooks/0/cooker/kind', 'oven')
    expect(valueAt(oven, '/cooks/0/stages/3/do')).toBe('hold')
    const stages = valueAt(lamb(), '/cooks/0/stages') as { do: string }[]
    const bare = setAt(
      lamb(),
      '/cooks/0/stages',
      stages.filter((stage) => stage.do !== 'sear'),
    )
    const still = change(bare, '/cooks/0/cooker/kind', 'ceramic-charcoal')
    expect((valueAt(still, '/cooks/0/stages') as { do: string }[]).some((stage) => stage.do === 'sear')).toBe(false)
  })

  it('aims as a chosen word says, whatever was typed before', () => {
    const medium = withHowDone(setAt(lamb(), '/cooks/0/stages/1/until/core', '40 °C'), 0, 'medium')
    expect(howDoneAt(medium, 0)).toBe('medium')
    expect(medium.cooks).toEqual(withHowDone(lamb(), 0, 'medium').cooks)
    expect(usualDone(cutById('lamb-leg-bone-in') as DoneCut)).toBe('medium-rare')
  })
})
