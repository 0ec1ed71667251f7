import { describe, expect, it } from 'vitest'
import { lethalityPerS } from '../../lib/model/lethality'
import {
  APPENDIX_A,
  lethalityLog,
  meetsMinimum,
  minimumFor,
  TABLE_LOG,
  tableReach,
  tableVerdict,
} from '../../lib/model/safety'
import { fromFahrenheit } from '../../lib/units'
import { published } from './measure'

interface Row {
  readonly F: number
  readonly s_6_5log: number
  readonly printed_unit: 'min' | 's'
}
const ROWS = published<{ rows: Row[] }>('fsis-appendix-a').rows
const TIMED = ROWS.filter((r) => r.s_6_5log > 0)
/** The one row that D and z do not reproduce: printed 169 s, computed 168 s. */
const EXCEPTION_F = 146
/** Dwell from D and z, rounded up to the printed unit; a hair is taken off so that a whole number stays one. */
const dwellS = ({ F, printed_unit }: Row) => {
  const unit = printed_unit === 'min' ? 60 : 1
  return Math.ceil(TABLE_LOG / lethalityPerS(fromFahrenheit(F) + 1e-12) / unit - 1e-6) * unit
}
const held = (tempC: number, forS: number) => new Array<number>(Math.round(forS) + 1).fill(tempC)

describe(`FSIS Appendix A, 6.5-log column, n ${TIMED.length}`, () => {
  it.each(TIMED.filter((r) => r.F !== EXCEPTION_F))(
    '$F °F follows from D and z to the printed digit: $s_6_5log s',
    (row) => {
      expect(dwellS(row)).toBe(row.s_6_5log)
    },
  )
  it('146 °F is the one exception: printed 169 s, computed 168 s', () => {
    const row = ROWS.find((r) => r.F === EXCEPTION_F) as Row
    expect([dwellS(row), row.s_6_5log]).toEqual([168, 169])
  })
  it('is held in the model as printed', () => {
    for (const [f, s] of APPENDIX_A) expect(ROWS.find((r) => r.F === f)?.s_6_5log).toBe(s)
  })
})

describe('verdicts are read from the printed table', () => {
  it.each(TIMED)('$F °F held for its printed time is met, a second less is not', ({ F, s_6_5log }) => {
    const level = fromFahrenheit(F)
    expect(tableVerdict(held(level, s_6_5log), 1)).toMatchObject({ met: true, printedS: s_6_5log })
    expect(tableVerdict(held(level, s_6_5log - 1), 1).met).toBe(false)
  })
  it('146 °F for 168 s reaches 6.5 log by D and z and is not met all the same', () => {
    const history = held(fromFahrenheit(146), 168)
    expect(lethalityLog(history, 1)).toBeGreaterThan(TABLE_LOG - 0.02)
    expect(tableVerdict(history, 1).met).toBe(false)
  })
  it('158 °F is met at once, 129.9 °F never', () => {
    expect(tableVerdict([20, 70.1, 20], 1).met).toBe(true)
    expect(tableVerdict(held(fromFahrenheit(129.9), 100_000), 1).met).toBe(false)
    expect(lethalityLog(held(fromFahrenheit(129.9), 100_000), 1)).toBe(0)
  })
  it('two short stays do not add up to one printed dwell', () => {
    const half = held(fromFahrenheit(140), 400)
    expect(tableVerdict([...half, 50, ...half], 1).met).toBe(false)
  })
  it('speaks for beef, with care for lamb and pork, not for poultry', () => {
    expect([
      tableReach('beef').reach,
      tableReach('lamb').reach,
      tableReach('pork').reach,
      tableReach('turkey').reach,
    ]).toEqual(['table', 'with-care', 'with-care', 'none'])
  })
})

describe('authority minimums', () => {
  it('are 145 °F with 3 min for whole cuts and 165 °F for poultry', () => {
    expect(minimumFor({ animal: 'lamb' })).toMatchObject({ tempC: fromFahrenheit(145), restMin: 3, asAsked: true })
    expect(minimumFor({ animal: 'duck' })).toMatchObject({ tempC: fromFahrenheit(165), restMin: 0 })
  })
  it('say whose they are where no table is held for the authority asked', () => {
    expect(minimumFor({ animal: 'beef' }, 'IE')).toMatchObject({ authority: 'US', asAsked: false })
  })
  it('want the rest too', () => {
    const minimum = minimumFor({ animal: 'beef' })
    expect(meetsMinimum([60, ...held(63, 181), 60], 1, minimum)).toBe(true)
    expect(meetsMinimum([60, ...held(63, 170), 60], 1, minimum)).toBe(false)
  })
})
