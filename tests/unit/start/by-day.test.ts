import { describe, expect, it } from 'vitest'
import { byDay, fromToday } from '../../../app/start/by-day'

const NOW = '2027-05-15'
const on = (date: string, title = date) => ({ id: `${date}/${title}`, title, date })
const dates = (list: readonly { date: string }[]) => list.map(({ date }) => date)

describe('the list of shoots', () => {
  it('puts what is next first, then what was last, whatever order it came in', () => {
    const { near } = byDay([on('2027-05-10'), on('2027-06-01'), on('2027-05-15'), on('2027-05-14')], NOW)
    expect(dates(near)).toEqual(['2027-05-15', '2027-06-01', '2027-05-14', '2027-05-10'])
  })

  it('shows the eight nearest days and folds the others, none lost', () => {
    const many = Array.from({ length: 40 }, (_, i) =>
      on(new Date(Date.UTC(2027, 4, 15 + (i - 20) * 3)).toISOString().slice(0, 10)),
    )
    const { near, ahead, behind } = byDay(many, NOW)
    expect(near).toHaveLength(8)
    expect(near.length + ahead.length + behind.length).toBe(40)
    expect(Math.max(...near.map(({ date }) => Math.abs(Date.parse(date) - Date.parse(NOW)) / 86_400_000))).toBe(12)
    expect(ahead.every(({ date }) => date > NOW) && behind.every(({ date }) => date < NOW)).toBe(true)
  })

  it('orders shoots of one day by title, so that the same list never changes by itself', () => {
    const list = [on(NOW, 'Turkey'), on(NOW, 'Brisket')]
    expect(byDay(list, NOW)).toEqual(byDay([...list].reverse(), NOW))
    expect(byDay(list, NOW).near.map(({ title }) => title)).toEqual(['Brisket', 'Turkey'])
  })

  it('says how far off a day is while that matters', () => {
    expect(['2027-05-15', '2027-05-16', '2027-05-12', '2028-05-15'].map((date) => fromToday(date, NOW))).toEqual([
      'today',
      'tomorrow',
      '3 days ago',
      '',
    ])
  })
})
