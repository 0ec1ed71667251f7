import { describe, expect, test } from 'vitest'
import { prepListOf } from '../../../lib/export/prep-list'
import { riskSheetOf } from '../../../lib/export/risk-sheet'
import { printPrepList } from '../../../lib/print/prep-list'
import { sheetsIn } from '../../../lib/print/render'
import { printRiskSheet } from '../../../lib/print/risk-sheet'
import { longDay } from '../export/long-day'
import { lambLayout, lambShoot } from '../export/synthetic'

const plain = { shoot: lambShoot(), layout: lambLayout() }
const input = (day = plain) => ({ ...day, units: 'metric' as const, revision: 3 })

describe('lists on paper', { timeout: 60_000 }, () => {
  test.each(['A4', 'Letter'] as const)(
    'the risk sheet stands on one sheet of %s, long names and all',
    async (paper) => {
      expect(sheetsIn(await printRiskSheet(riskSheetOf(input()), paper))).toBe(1)
      expect(sheetsIn(await printRiskSheet(riskSheetOf(input(longDay(40))), paper))).toBe(1)
    },
  )
  test('the prep list grows with the shots, and its bytes do not depend on when it is printed', async () => {
    const short = await printPrepList(prepListOf(input()), 'A4')
    expect(sheetsIn(short)).toBe(2)
    expect(Buffer.compare(short, await printPrepList(prepListOf(input()), 'A4'))).toBe(0)
    expect(sheetsIn(await printPrepList(prepListOf(input(longDay(40))), 'Letter'))).toBe(3)
  })
})
