import { describe, expect, test } from 'vitest'
import { startingDay } from '../../../lib/plan/coverage'
import { EXTRA_SHOTS } from '../../../lib/plan/coverage-extras'
import { removeAt, removeShot, setAt, shotsOf, valueAt } from '../../../lib/plan/edit'
import { leaveOffer, offersOf, takeOffer } from '../../../lib/plan/offers'
import { problemsForLayout } from '../../../lib/plan/parse'
import type { ShootDocument } from '../../../lib/plan/shoot'
import { faults, fixtureText, lambWith, read } from './shoots'

const loin = (): ShootDocument => JSON.parse(fixtureText('pork-loin'))
const turkey = (): ShootDocument => ({ ...JSON.parse(fixtureText('turkey-oven')), ...startingDay('hero') })
const ids = (document: ShootDocument) => offersOf(document).map(({ id }) => id)
const takeAll = (document: ShootDocument): ShootDocument => {
  const [offer] = offersOf(document)
  return offer ? takeAll(takeOffer(document, offer)) : document
}

describe('shots offered from the plan', () => {
  test('a fully covered loin is offered the extras, all of which a charcoal fire can have', () =>
    expect(ids(loin())).toEqual(EXTRA_SHOTS.map(({ id }) => id)))
  test('a starting shot that was taken out is offered again', () => {
    expect(ids(removeShot(loin(), 'sear'))[0]).toBe('sear')
  })
  test('an oven is offered neither embers nor choking, one camera no locked-off shot, a crew without sound no sound', () => {
    for (const absent of ['embers', 'choke', 'smoke', 'vents']) expect(ids(turkey())).not.toContain(absent)
    expect(ids(setAt(loin(), '/cameras', [{ id: 'A' }]))).not.toContain('whole-cook')
    const silent = setAt(loin(), '/people', [{ id: 'cam', roles: ['camera'] }])
    for (const absent of ['room-tone', 'wild-track']) expect(ids(silent)).not.toContain(absent)
  })
  test('taken, it is in the plan and no longer offered; left, it is offered no more and the plan is as it was', () => {
    const offer = offersOf(loin()).find(({ id }) => id === 'cross-section')
    if (!offer) throw new Error('the cross section is not offered')
    const taken = takeOffer(loin(), offer)
    expect(shotsOf(taken).at(-1)).toMatchObject({ id: 'cross-section', state: 'sliced', after: ['first-cut'] })
    expect(ids(taken)).not.toContain('cross-section')
    const left = leaveOffer(loin(), offer)
    expect([ids(left).includes('cross-section'), shotsOf(left)]).toEqual([false, shotsOf(loin())])
    expect(faults(left)).toEqual([])
  })
  test('it comes after shots that the plan has, and after none that it has not', () => {
    const offer = offersOf(removeShot(loin(), 'first-cut')).find(({ id }) => id === 'plate')
    expect(offer && 'after' in offer).toBe(false)
  })
  test.each([
    ['loin', loin],
    ['turkey', turkey],
    ['lamb', () => lambWith({ '/shots': [] })],
    ['loin without a sear', () => setAt(removeAt(loin(), '/cooks/0/stages/2'), '/shots', [])],
  ])('%s: with everything taken the plan reads and can be laid out', (_, document) => {
    const whole = takeAll(document())
    expect(faults(whole)).toEqual([])
    expect(problemsForLayout(read(whole))).toEqual([])
    expect(valueAt(whole, '/shots/0/title')).toBeTruthy()
  })
  test('a form in pieces is offered nothing', () => {
    for (const broken of [{}, { cooks: [] }, { cooks: [null] }, { cooks: [{ id: 'x' }] }])
      expect(offersOf(broken)).toEqual([])
  })
})
