import { describe, expect, it } from 'vitest'
import { fieldGroups } from '../../../app/shoots/plan-fields'
import { rememberedFields } from '../../../app/shoots/remembered-field'
import { writtenMemory } from '../../../lib/plan/cooker-memory-fields'
import { valueAt } from '../../../lib/plan/edit'
import type { ShootDocument } from '../../../lib/plan/shoot'
import { faults, lamb, read } from './shoots'

const memory = writtenMemory({ cooks: 3, level: { mean: -6, sd: 3 }, pace: { mean: 0.02, sd: 0.03 } })
const kettle = { name: 'The garden kettle', kind: 'kettle-charcoal', cooks: 3, memory, says: 'It runs 6 °C under.' }
const oven = { ...kettle, name: 'The studio oven', kind: 'oven' }
const field = (document: ShootDocument, cookers = [kettle, oven]) => rememberedFields(document, 0, cookers)[0]
const write = (document: ShootDocument, text: string) => field(document)?.write(document, text) ?? document

describe('the field for a cooker that is remembered', () => {
  it('offers those of its kind and asks nothing where there is none', () => {
    expect(field(lamb())?.options).toEqual([
      ['', 'any kettle, charcoal'],
      ['The garden kettle', 'The garden kettle, remembered from 3 cooks'],
    ])
    expect(field(lamb(), [oven])).toBeUndefined()
  })
  it('puts what was learnt into the plan, says it, and takes it out again', () => {
    const chosen = write(lamb(), 'The garden kettle')
    expect(faults(chosen)).toEqual([])
    expect(read(chosen).cooks[0]?.cooker).toMatchObject({ name: 'The garden kettle', memory: { cooks: 3 } })
    expect([field(chosen)?.read(chosen), field(chosen)?.why]).toEqual(['The garden kettle', 'It runs 6 °C under.'])
    expect(write(chosen, '')).toEqual(lamb())
  })
  it('shows a memory that the register knows otherwise by now as the file has it', () => {
    const chosen = write(lamb(), 'The garden kettle')
    const more = { ...kettle, cooks: 4, memory: { ...memory, cooks: 4 } }
    expect(field(chosen, [more])?.options?.map(([, words]) => words)).toEqual([
      'any kettle, charcoal',
      'The garden kettle, remembered from 4 cooks',
      'The garden kettle, as it was after 3 cooks',
    ])
    expect(field(chosen, [])?.options).toHaveLength(2)
  })
  it('forgets what one cooker taught when another kind is chosen', () => {
    const chosen = write(lamb(), 'The garden kettle')
    const kinds = fieldGroups(chosen, { cookers: [kettle] }).flatMap(({ fields }) => fields)
    const other = kinds.find(({ key }) => key === 'cooker-0')?.write(chosen, 'oven')
    expect(other && valueAt(other, '/cooks/0/cooker')).toEqual({ kind: 'oven' })
  })
})
