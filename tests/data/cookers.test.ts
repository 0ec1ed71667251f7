import { appendFileSync } from 'node:fs'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { cookerIdOf, forgetCooker, keepLesson, keptCookers } from '../../lib/data/cookers'
import { appendLines } from '../../lib/data/line-file'
import type { CookerLesson } from '../../lib/model/memory'
import { onServer } from '../migrated-database'
import { closeAll, freshPlace } from './real-database'

let place = ''
beforeEach(async () => {
  place = await freshPlace()
})
afterEach(closeAll)
const lesson = (cook: string, mean = -6): CookerLesson => ({
  cook,
  date: '2027-05-15',
  level: { mean, sd: 4, before: 11 },
  pace: { mean: 0.02, sd: 0.06, before: 0.08 },
  tie: 0.2,
  warmUpS: 2800,
})
const KETTLE = 'kettle-charcoal'
const cooksOf = async () => (await keptCookers()).map(({ lessons }) => lessons.map(({ cook }) => cook))

// Nothing is held in memory: each of these reads what is kept, as after a restart.
describe('the register of cookers', () => {
  it('keeps each lesson under its cooker, whatever way the name is written, and a cook kept again once', async () => {
    await keepLesson('The garden kettle', KETTLE, lesson('a/hero'), 1)
    await keepLesson(' the Garden kettle ', KETTLE, lesson('b/hero'), 2)
    await keepLesson('The garden kettle', KETTLE, lesson('a/hero', -8), 3)
    await keepLesson('The garden kettle', 'oven', lesson('c/hero'), 4)
    const [kettle, oven] = await keptCookers()
    expect(kettle).toMatchObject({ name: 'The garden kettle', kind: KETTLE, forgotten: 0 })
    expect(kettle?.lessons).toEqual([lesson('a/hero', -8), lesson('b/hero')])
    expect(oven?.lessons.map(({ cook }) => cook)).toEqual(['c/hero'])
  })
  it('forgets a cooker and has it back; what was learnt in between stays', async () => {
    const id = await keepLesson('The garden kettle', KETTLE, lesson('a/hero'), 1)
    expect(await forgetCooker(id, false, 2)).toBe(false)
    expect(await forgetCooker(id, true, 3)).toBe(true)
    expect([await cooksOf(), (await keptCookers())[0]?.forgotten]).toEqual([[[]], 1])
    expect(await forgetCooker(id, true, 4)).toBe(false)
    await keepLesson('The garden kettle', KETTLE, lesson('b/hero'), 5)
    expect(await cooksOf()).toEqual([['b/hero']])
    expect(await forgetCooker(id, false, 6)).toBe(true)
    expect(await cooksOf()).toEqual([['a/hero', 'b/hero']])
    await Promise.all([forgetCooker(id, true, 7), forgetCooker(id, true, 7)])
    expect(await forgetCooker(id, false, 8)).toBe(true)
    expect((await cooksOf())[0]).toHaveLength(2)
  })
  it('passes over a line that a power cut left half written, and knows no cooker by a strange id', async () => {
    const id = await keepLesson('The garden kettle', KETTLE, lesson('a/hero'), 1)
    const half = '{"at":2,"forgot'
    if (onServer()) await appendLines(`cookers/${id}`, [half])
    else appendFileSync(path.join(place, 'cookers', `${id}.ndjson`), half)
    expect(await cooksOf()).toEqual([['a/hero']])
    expect(await forgetCooker('../door/owner', true, 3)).toBe(false)
    expect(await forgetCooker(cookerIdOf('Another', KETTLE), true, 3)).toBe(false)
  })
})
