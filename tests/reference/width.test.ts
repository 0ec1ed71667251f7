import { expect, it } from 'vitest'
import { COOKERS } from '../../lib/model/cooker'
import { type Cut, cutById } from '../../lib/model/cuts'
import { simulate } from '../../lib/model/simulate'
import { drawMember } from '../../lib/model/spread'
import { GATES } from './gates'
import { CHART, type ChartRow, chartSample, ovenSetting, scoreOf } from './measure'

const MEMBERS = 256
/** Every eighth held-out row: the width hardly depends on the row, and 256 members of all 37 would take minutes. */
const LOOKED_AT = CHART.filter((row) => row.role === 'score').filter((_, i) => i % 8 === 0)

function variance(row: ChartRow): number {
  const cut = cutById(row.cut) as Cut
  const input = { startC: row.start_C, thicknessSpread: cut.thicknessSpread, habits: COOKERS.oven }
  const cook = { cut, massKg: row.mass_kg, startC: row.start_C, ovenC: row.oven_C, endC: row.endpoint_C }
  const setting = ovenSetting(cook)
  const logs = Array.from({ length: MEMBERS }, (_, m) =>
    Math.log(simulate(setting, drawMember(1, m, input)).moments.pull),
  )
  const mean = logs.reduce((a, b) => a + b) / MEMBERS
  return logs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / MEMBERS
}

it('a forecast of a roast of guessed thickness is as wide as the tables scatter about the likely member', () => {
  const scatter = scoreOf(CHART.filter((row) => row.role === 'score').map(chartSample)).logSd
  const width = Math.sqrt(LOOKED_AT.reduce((sum, row) => sum + variance(row), 0) / LOOKED_AT.length)
  const gate = GATES['roasting-times/width']
  expect(scatter / width, `scatter ${scatter}, width ${width}`).toBeGreaterThanOrEqual(gate.least)
  expect(scatter / width, `scatter ${scatter}, width ${width}`).toBeLessThanOrEqual(gate.most)
}, 120_000)
