import { describe, expect, test } from 'vitest'
import { riskSheetOf } from '../../../lib/export/risk-sheet'
import type { Cook, Shoot } from '../../../lib/plan/shoot'
import { celsius, metresPerSecond } from '../../../lib/units'
import { lambLayout, lambShoot } from './synthetic'

const shoot = lambShoot()
const hero = shoot.cooks[0] as Cook
const sheet = (change: Partial<Shoot> = {}, layout = lambLayout()) =>
  riskSheetOf({ shoot: { ...shoot, ...change }, layout, units: 'metric', revision: 3 })
const linesOf = (of: ReturnType<typeof sheet>) => of.groups.flatMap(({ lines }) => lines)
const hazards = (of: ReturnType<typeof sheet>) => linesOf(of).map(({ hazard }) => hazard)
const cooker = (kind: Cook['cooker']['kind']) => ({
  cooks: [{ ...hero, cooker: { kind }, stages: hero.stages.filter((stage) => stage.do !== 'sear') }],
})

describe('risk sheet', () => {
  test('a charcoal fire brings fire, carbon monoxide, a choked lid, ash and hot fat', () =>
    expect(hazards(sheet())).toEqual(
      expect.arrayContaining([
        'Open fire',
        'Fire left alone',
        'Carbon monoxide',
        'Choked fire',
        'Ash',
        'Hot fat at the sear',
      ]),
    ))
  test('an oven brings none of them, but its plug', () => {
    const found = hazards(sheet(cooker('oven')))
    expect(found).not.toEqual(expect.arrayContaining(['Open fire']))
    for (const absent of ['Carbon monoxide', 'Ash', 'Sun on the crew', 'Hot fat at the sear', 'Dark'])
      expect(found).not.toContain(absent)
    expect(found).toContain('Electricity')
  })
  test('gas is tried for leaks, pellets burn and are plugged in', () => {
    expect(hazards(sheet(cooker('gas-grill')))).toContain('Gas')
    expect(hazards(sheet(cooker('pellet')))).toEqual(expect.arrayContaining(['Open fire', 'Electricity']))
  })
  test('sun, dark, heat, cold and wind come with the day and its weather', () => {
    expect(linesOf(sheet()).find(({ hazard }) => hazard === 'Sun on the crew')?.does).toMatch(/^6 hours of daylight/)
    expect(hazards(sheet())).not.toContain('Dark')
    const late = { ...lambLayout(), wrap: '2027-05-15T23:30+01:00' }
    expect(linesOf(sheet({}, late)).find(({ hazard }) => hazard === 'Dark')?.does).toMatch(/^Dark from 22:0\d/)
    const weather = (air: number, wind: number) => ({ weather: { air: celsius(air), wind: metresPerSecond(wind) } })
    expect(hazards(sheet(weather(31, 2)))).toContain('Heat')
    expect(hazards(sheet(weather(4, 2)))).toContain('Cold')
    expect(hazards(sheet(weather(15, 9)))).toContain('Wind and sparks')
    for (const absent of ['Heat', 'Cold', 'Wind and sparks'])
      expect(hazards(sheet(weather(15, 2)))).not.toContain(absent)
  })
  test('a sheltered fire keeps its sides open, and is told no wind', () => {
    const sheltered = { cooks: [{ ...hero, cooker: { ...hero.cooker, sheltered: true } }] }
    expect(linesOf(sheet(sheltered)).find(({ hazard }) => hazard === 'Carbon monoxide')?.does).toContain('two sides')
    expect(hazards(sheet({ ...sheltered, weather: { wind: metresPerSecond(9) } }))).not.toContain('Wind and sparks')
  })
  test('a fire through the small hours is not watched alone', () => {
    expect(hazards(sheet())).not.toContain('Night')
    const tasks = [
      { id: 'fire-watch', start: '2027-05-15T22:00+01:00', end: '2027-05-16T07:00+01:00', people: ['presenter'] },
    ]
    expect(hazards(sheet({}, { ...lambLayout(), tasks }))).toContain('Night')
  })
  test('each line says who, of this crew, or leaves a line to write on', () => {
    expect(linesOf(sheet()).find(({ hazard }) => hazard === 'Open fire')?.who).toBe('presenter')
    expect(linesOf(sheet({ people: [] })).every(({ who }) => who === '')).toBe(true)
    expect(hazards(sheet({ people: [{ id: 'me', roles: ['camera', 'cook'] }] }))).toContain('Working alone')
  })
  test('what only the producer knows is printed, or is a line to write on', () => {
    expect([sheet().fireRules, sheet().responsible]).toEqual([null, null])
    const told = sheet({
      risk: { fireRules: 'None today', responsible: 'Producer' },
      callSheet: { allergens: 'mustard' },
    })
    expect([told.fireRules, told.responsible]).toEqual(['None today', 'Producer'])
    expect(linesOf(told).find(({ hazard }) => hazard === 'Allergens')?.does).toContain('mustard')
  })
  test('it defers to local rules and licensed practice', () =>
    expect(sheet().defers).toMatch(/Local rules.*licensed practice go before it/))
})
