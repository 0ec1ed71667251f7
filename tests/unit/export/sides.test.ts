import { expect, test } from 'vitest'
import { formerNames } from '../../../lib/export/calendar'
import { eventsOf } from '../../../lib/export/calendar-events'
import { callSheetOf } from '../../../lib/export/call-sheet'
import { drawHeatLine } from '../../../lib/export/heat-line'
import { prepListOf } from '../../../lib/export/prep-list'
import { celsius, minutes } from '../../../lib/units'
import { clock, lambLayout, lambShoot, MEAT_ON, PLACE, syntheticForecast, ZONE } from './synthetic'

const side = { id: 'potatoes', title: 'Potatoes', takes: minutes(55), at: celsius(160), needs: ['stylist'] }
const shoot = { ...lambShoot(), sides: [side] }
const handled = (id: string, start: string, end: string) => ({
  id,
  start: clock(start),
  end: clock(end),
  people: ['stylist'],
})
const bare = lambLayout()
const tasks = [handled('potatoes-on', '19:04', '19:05'), handled('potatoes-off', '20:00', '20:01')]
const layout = { ...bare, tasks: [...bare.tasks, ...tasks] }
const sheet = { shoot, layout, units: 'metric' as const }

test('a side stands on the call sheet, the heat line and its hands’ slip, by name', () => {
  const made = callSheetOf({
    ...sheet,
    forecasts: new Map([['hero', syntheticForecast()]]),
    stamp: { revision: 1, saved: null, forecast: null },
    cautions: [],
  })
  expect(made.watch).toContainEqual(expect.stringMatching(/^Potatoes: on: .*, 19:04 to 19:05$/))
  const slip = made.slips.flatMap(({ rows }) => rows).map(({ time, title }) => `${time} ${title}`)
  expect(slip).toContain('20:00 Potatoes: off, until 20:01')
  const cooks = [{ forecast: syntheticForecast(), meatOn: MEAT_ON, title: 'hero' }]
  const how = { width: 1100, units: 'metric' as const, lanes: true, standing: false }
  const line = drawHeatLine({ zone: ZONE, place: PLACE, title: 'Heat line', cooks, layout, shoot, ...how })
  expect(line.marks.flatMap((mark) => ('text' in mark ? [mark.text] : []))).toContain('Potatoes')
})
test('a side is on the calendar, and cancelled there when it is gone', () => {
  const names = eventsOf(sheet).map(({ name }) => name)
  expect(names).toEqual(expect.arrayContaining(['task-potatoes-on', 'task-potatoes-off']))
  const former = formerNames(shoot).map(({ name }) => name)
  expect(former).toEqual(expect.arrayContaining(['task-potatoes-on', 'task-potatoes-off']))
})
test('a side is bought, and made ready before it goes on, its time told as the crew’s own', () => {
  const list = prepListOf({ ...sheet, revision: 1 })
  expect(list.shopping).toContainEqual({ what: 'Potatoes', much: '____' })
  expect(list.ahead.map(({ what }) => what)).toContain(
    'Ready in its dish, to go on: Potatoes. It takes 55 min at 160 °C (the crew’s own figure) and comes off at 20:00.',
  )
})

test('a side is bought with the recipe only where the recipe names it', () => {
  const ingredients = ['small potatoes', 'green onions', 'sea salt'].map((what) => ({ what, much: '400 g' }))
  const bought = (title: string) =>
    prepListOf({
      shoot: { ...shoot, sides: [{ ...side, title }], card: { ingredients } },
      layout,
      units: 'metric',
      revision: 1,
    }).shopping.map(({ what }) => what)
  expect(bought('Potatoes under the roast')).not.toContain('Potatoes under the roast')
  expect(bought('Green beans')).toContain('Green beans')
  expect(bought('A gratin')).toContain('A gratin')
})
