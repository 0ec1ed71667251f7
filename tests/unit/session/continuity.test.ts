import { describe, expect, it } from 'vitest'
import type { BoardFacts, BoardShot } from '../../../lib/session/board-facts'
import { continuityOf } from '../../../lib/session/continuity'
import { at, line } from '../log/lines'
import { live, sessionDayWith } from './made-up-day'

const shot = (min: number, title: string, food: string | null = null): BoardShot => ({
  number: min,
  title,
  place: null,
  cameras: [],
  people: [],
  setupStart: at(min),
  start: at(min + 5),
  end: at(min + 10),
  food,
})
const FACTS: BoardFacts = {
  title: 'Leg of lamb',
  zone: 'Europe/Dublin',
  people: [],
  cameras: [],
  cooks: [],
  shots: {
    oil: shot(1, 'Oil on'),
    one: shot(11, 'One'),
    two: shot(22, 'Two', 'raw'),
    three: shot(33, 'Three'),
    four: shot(44, 'Four'),
  },
  tasks: [],
  meals: [],
  dark: [],
}
const note = (min: number, text: string, more: object = {}) => line(min, 'note', { text, ...more })

describe('continuity', () => {
  it('shows the shots still to do with how it looked, in the wanted state, then those done, then notes of no shot', () => {
    const day = live(sessionDayWith({ calls: [] }))
    const lines = [
      note(1, 'knot left', { shot: 'oil' }),
      note(2, 'raw, tray turned', { state: 'raw' }),
      note(3, 'fire lit'),
      note(4, 'four is dressed', { shot: 'four' }),
      line(5, 'shot-state', { shot: 'oil', state: 'caught' }),
    ]
    for (const one of lines) day.line(6, one)
    const { shots, other } = continuityOf(day.session(), FACTS)
    const texts = (notes: readonly { entry: { text: string } }[]) => notes.map(({ entry }) => entry.text)
    expect(shots.map(({ title, isOver }) => [title, isOver])).toEqual([
      ['One', false],
      ['Two', false],
      ['Three', false],
      ['Four', false],
      ['Oil on', true],
    ])
    expect(texts(shots[1]?.before ?? [])).toEqual(['raw, tray turned'])
    expect(texts(shots[0]?.before ?? [])).toEqual(['four is dressed', 'fire lit'])
    expect(texts(shots[3]?.notes ?? [])).toEqual(['four is dressed'])
    expect([2, 3, 4].map((i) => shots[i]?.before)).toEqual([[], [], []])
    expect(texts(other)).toEqual(['fire lit', 'raw, tray turned'])
  })
})
