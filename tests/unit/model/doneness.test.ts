import { describe, expect, it } from 'vitest'
import {
  DONENESS_RANGES,
  DONENESS_SCALES,
  DONENESS_WORDS,
  donenessAt,
  donenessWarning,
  wordsFor,
} from '../../../lib/model/doneness'
import { SOURCES } from '../../../lib/model/sources'
import { DONENESS } from '../../../lib/plan/vocabulary'

const beef = { animal: 'beef', name: 'beef rib' } as const
const turkey = { animal: 'turkey', name: 'whole turkey' } as const
const pork = { animal: 'pork', name: 'pork loin' } as const

describe('doneness', () => {
  it('has the words of the shoot file', () => expect([...DONENESS_WORDS]).toEqual([...DONENESS]))
  it('has ranges that join without a gap', () => {
    for (let i = 1; i < DONENESS_RANGES.length; i++) expect(DONENESS_RANGES[i]?.fromC).toBe(DONENESS_RANGES[i - 1]?.toC)
  })
  it('calls 52 °C rare to medium-rare, 55 °C medium-rare, 57 °C at the end of it, 61 °C medium', () => {
    expect(donenessAt(beef, 50)).toBe('rare')
    expect(donenessAt(beef, 55)).toBe('medium-rare')
    expect(donenessAt(beef, 57)).toBe('medium-rare')
    expect(donenessAt(beef, 61)).toBe('medium')
    expect(donenessAt(beef, 75)).toBe('well-done')
    expect(donenessAt(beef, 40)).toBeUndefined()
  })
  it('shows that the scales disagree on medium by 11 °C and more', () => {
    const medium = DONENESS_RANGES.find((r) => r.word === 'medium')
    expect((medium?.anyToC ?? 0) - (medium?.anyFromC ?? 0)).toBeGreaterThan(11)
  })
  it('has no rare poultry and no rare pork', () => {
    expect(wordsFor('turkey')).toEqual([])
    expect(wordsFor('pork')).not.toContain('rare')
    expect(donenessAt(turkey, 52)).toBeUndefined()
    expect(donenessAt(pork, 52)).toBeUndefined()
  })
  it('warns where no scale agrees with word and temperature, and is still where one does', () => {
    expect(donenessWarning(beef, 'medium-rare', 55)).toBeUndefined()
    expect(donenessWarning(beef, 'medium-rare', 62.8)).toBeUndefined()
    expect(donenessWarning(beef, 'medium-rare', 71)).toContain('well-done')
    expect(donenessWarning(beef, 'well-done', 55)).toContain('medium-rare')
    expect(donenessWarning(turkey, 'medium', 60)).toContain('red meat')
    expect(donenessWarning(pork, 'rare', 60)).toContain('pork')
  })
  it('names a known source for each scale', () => {
    for (const scale of DONENESS_SCALES) expect(scale.source in SOURCES).toBe(true)
  })
})
