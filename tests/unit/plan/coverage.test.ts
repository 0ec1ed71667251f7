import { describe, expect, test } from 'vitest'
import { coverageFor, STARTING_SHOTS, startingDay } from '../../../lib/plan/coverage'
import { removeAt, setAt, shotsOf, valueAt } from '../../../lib/plan/edit'
import { momentsOf } from '../../../lib/plan/moments'
import { type NewShoot, newShootDocument, withCoverage, withoutAbsentMoments } from '../../../lib/plan/new-shoot'
import { problemsForLayout } from '../../../lib/plan/parse'
import type { Cook, ShootDocument } from '../../../lib/plan/shoot'
import { demoText, faults, fixtureText, lamb, lambWith, read } from './shoots'

const cookOf = (document: ShootDocument) => read(document).cooks[0] as Cook
const loin = () => cookOf(JSON.parse(fixtureText('pork-loin')))
const turkey = () => cookOf(JSON.parse(fixtureText('turkey-oven')))
const { people, cameras } = startingDay()
const ids = (shots: readonly { id: string }[]) => shots.map(({ id }) => id)
const FORM: NewShoot = {
  title: 'Pork loin over charcoal',
  cut: 'pork-loin-bone-in',
  mass: '3.6 kg',
  cooker: 'kettle-charcoal',
  cookerAt: '150 °C',
  probe: 'turn',
  pull: '55 °C',
  sear: { at: '300 °C', off: '63 °C' },
  rest: '15 min',
  slice: { at: '18:30' },
  date: '2027-05-15',
  zone: 'Europe/Dublin',
  place: { lat: 53.35, lon: -6.26 },
}

describe('coverageFor: the fourteen starting shots', () => {
  test('a seared roast over charcoal with a turn has all fourteen', () => {
    expect(ids(coverageFor(loin(), people, cameras))).toEqual(
      'raw-beauty seasoning lighting meat-on smoke probe-close turn display vents sear off-heat carryover first-cut beauty'.split(
        ' ',
      ),
    )
  })
  test('a bird in an oven has no turn, vents, sear or smoke, and its fire is a switch', () => {
    const shots = ids(coverageFor(turkey(), people, cameras))
    expect(STARTING_SHOTS.map(({ id }) => id).filter((id) => !shots.includes(id))).toEqual([
      'smoke',
      'turn',
      'vents',
      'sear',
    ])
    expect(coverageFor(turkey(), people, cameras)[2]?.title).toBe('The oven is switched on')
  })
  test('without a sear the roast comes off as it is pulled: the display is shot whatever the lid does', () => {
    const lids = (cook: Cook) => {
      const shots = coverageFor(cook, people, cameras)
      return ['display', 'off-heat'].map((id) => shots.find((shot) => shot.id === id)?.lid)
    }
    expect([lids(loin()), lids(turkey())]).toEqual([
      ['shut', 'open'],
      ['any', 'open'],
    ])
  })
  test('every moment of the plan but cooker-steady and carryover-peak has a shot at it', () => {
    const at = coverageFor(loin(), people, cameras).map((shot) => valueAt(shot, '/at/moment'))
    expect(momentsOf(loin()).filter((id) => !at.includes(id))).toEqual(['cooker-steady', 'carryover-peak'])
  })
  test('the probe going in at the turn asks for a second camera and not for the presenter twice', () => {
    const needs = (id: string, cook: Cook) => coverageFor(cook, people, cameras).find((shot) => shot.id === id)?.needs
    expect([needs('turn', loin()), needs('probe-close', loin())]).toEqual([['camera', 'presenter'], ['camera']])
    const later = setAt(JSON.parse(fixtureText('pork-loin')), '/cooks/0/stages/1/probe/at', '45 min')
    expect(needs('probe-close', cookOf(later))).toEqual(['camera', 'presenter'])
  })
  test('a light waits for the sliced beauty', () => {
    const beauty = coverageFor(loin(), people, cameras, 'golden-hour').at(-1)
    expect([beauty?.light, beauty?.free, beauty?.state]).toEqual(['golden-hour', undefined, 'sliced'])
  })
  test('a crew of one is asked for what it is', () => {
    const one = [{ id: 'me', roles: ['camera'] }]
    expect(
      coverageFor(loin(), one, cameras).every((shot) => (shot.needs as string[]).every((need) => need === 'camera')),
    ).toBe(true)
    const two = [
      { id: 'cook', roles: ['cook'] },
      { id: 'cam', roles: ['camera', 'sound'] },
    ]
    expect(coverageFor(loin(), two, cameras).find(({ id }) => id === 'first-cut')?.needs).toEqual(['camera', 'cook'])
  })
  test('without a camera there is nothing to shoot', () => expect(coverageFor(loin(), people, [])).toEqual([]))
})

describe('newShootDocument: a full day at once', () => {
  const full = newShootDocument(FORM)
  test('it reads, and can be laid out', () => {
    expect(faults(full)).toEqual([])
    expect(problemsForLayout(read(full))).toEqual([])
    expect(shotsOf(full)).toHaveLength(14)
  })
  test('all eleven moments', () => expect(momentsOf(cookOf(full))).toHaveLength(11))
  test('it is the sample of the pork loin', () => {
    const sample = JSON.parse(fixtureText('pork-loin'))
    expect(newShootDocument({ ...FORM, place: sample.place })).toEqual(sample)
  })
  test.each(['oven', 'convection-oven', 'ceramic-charcoal', 'kettle-charcoal'])(
    '%s, with and without sear, turn and light',
    (cooker) => {
      for (const sear of [FORM.sear, undefined])
        for (const probe of ['start', 'turn', '50 min'])
          for (const slice of [undefined, { at: '18:30' }, { in: 'golden-hour' } as const])
            expect(faults(newShootDocument({ ...FORM, cooker, sear, probe, slice }))).toEqual([])
    },
  )
  test('the fire is watched as long as it burns', () =>
    expect(read(full).tasks).toEqual([expect.objectContaining({ from: 'fire-lit', to: 'off-heat', needs: ['cook'] })]))
})

describe('shots follow the plan while its form is filled in', () => {
  test('withCoverage: an oven loses the vents, a sear taken out its shots; back again they come back', () => {
    const full = newShootDocument(FORM)
    const oven = withCoverage(setAt(full, '/cooks/0/cooker/kind', 'oven'))
    expect(ids(shotsOf(oven))).not.toContain('vents')
    expect(faults(oven)).toEqual([])
    const unseared = withCoverage(removeAt(full, '/cooks/0/stages/2'))
    expect(ids(shotsOf(unseared))).not.toContain('sear')
    expect(withCoverage(setAt(oven, '/cooks/0/cooker/kind', 'kettle-charcoal'))).toEqual(full)
  })
  test('withCoverage keeps shots of the person, and leaves a form in pieces alone', () => {
    const own = setAt(newShootDocument(FORM), '/shots/-', { id: 'dog', title: 'The dog', free: true })
    expect(ids(shotsOf(withCoverage(own)))).toContain('dog')
    for (const broken of [{}, { cooks: [] }, { cooks: [{ id: 'x' }] }, { cooks: [null] }])
      expect(withCoverage(broken)).toBe(broken)
    expect(faults(withCoverage(setAt(newShootDocument(FORM), '/people', [{ id: 'x' }]))).length).toBeGreaterThan(0)
  })
  test('withoutAbsentMoments: what a changed plan no longer has goes, edits stay', () => {
    const edited = lambWith({ '/shots/3/title': 'On it goes' })
    const unseared = removeAt(edited, '/cooks/0/stages/2')
    expect(faults(unseared).length).toBeGreaterThan(0)
    const matched = withoutAbsentMoments(unseared)
    expect(faults(matched)).toEqual([])
    expect(valueAt(matched, '/shots/3/title')).toBe('On it goes')
    expect(withoutAbsentMoments(lamb())).toEqual(lamb())
  })
})

describe('the demo', () => {
  const demo = read(JSON.parse(demoText()))
  test('has the whole coverage, the sliced beauty in golden hour', () => {
    expect(ids(demo.shots ?? [])).toEqual(expect.arrayContaining(ids(STARTING_SHOTS)))
    expect(demo.shots?.find(({ id }) => id === 'beauty')?.light).toBe('golden-hour')
  })
  test('has a crew of four and the host of the garden, two operators, two cameras and somebody at the fire until it is out', () => {
    expect(demo.people?.map(({ id }) => id)).toEqual(['presenter', 'cam-1', 'cam-2', 'stylist', 'host'])
    expect(demo.people?.filter(({ roles }) => roles.includes('camera'))).toHaveLength(2)
    expect([demo.cameras?.length, demo.tasks?.map(({ needs }) => needs)]).toEqual([2, [['cook'], ['host']]])
  })
})
