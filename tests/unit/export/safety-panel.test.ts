import { describe, expect, it } from 'vitest'
import { safetyPanel } from '../../../lib/export/safety-panel'
import { madeUpForecast } from '../card/made-up-forecast'

const lamb = madeUpForecast({ sear: false, cooker: 'oven' })
const line = (id: string, units: 'metric' | 'us' = 'metric') =>
  safetyPanel(lamb, 'lamb', 'US', units).lines.find((each) => each.id === id)

describe('the safety panel', () => {
  it('has one line for each rule, and each names its source', () => {
    const { lines } = safetyPanel(lamb, 'lamb', 'US', 'metric')
    const ids = lines.map(({ id }) => id)
    expect(ids).toEqual([
      'consumer-minimum',
      'food-code-roast',
      'dwell-table',
      'dwell-table-7',
      'come-up',
      'time-in-range',
      'cooling',
      'left-out',
    ])
    for (const { source, verdict } of lines) {
      expect(source).toMatch(/FSIS|Food Code/)
      expect(verdict).not.toBe('')
    }
  })
  it('asks and answers in the reader’s units, and in no other', () => {
    const us = safetyPanel(lamb, 'lamb', 'US', 'us')
    const metric = safetyPanel(lamb, 'lamb', 'US', 'metric')
    const told = (panel: typeof us) =>
      panel.lines.flatMap((l) => [l.rule, l.asks, l.gives, ...l.details]).concat(panel.lead)
    for (const text of told(us)) expect(text).not.toMatch(/°C|\d (?:cm|mm|kg)\b/)
    for (const text of told(metric).filter((t) => !t.includes('printed'))) expect(text).not.toMatch(/°F|\d (?:in|lb)\b/)
    expect(line('consumer-minimum')?.asks).toBe('63 °C for 3 min')
    expect(line('consumer-minimum', 'us')?.asks).toBe('145 °F for 3 min')
  })
  it('says whether the oven of the plan goes with the code', () => {
    expect(line('food-code-roast')?.details[0]).toMatch(/177 °C or more; this plan roasts at 150 °C: not kept\.$/)
  })
  it('keeps cooking and leaving out apart: the first has no limit as such, the second has', () => {
    expect(line('time-in-range')).toMatchObject({ asks: '5 °C to 57 °C: no limit on cooking', verdict: 'shown only' })
    expect(line('left-out')?.asks).toBe('no more than 2 h; 1 h above 32 °C')
  })
  it('says how long the roast takes to cool whole, and what to do instead', () => {
    const { leftovers } = safetyPanel(lamb, 'lamb', 'US', 'metric')
    expect(line('cooling')).toMatchObject({ verdict: 'not kept' })
    expect(leftovers).toMatch(/^Do not put it away whole: keep slices no thicker than \d+ mm in one layer/)
  })
  it('poultry has no line of the beef table, and another authority is sent to its own', () => {
    const turkey = safetyPanel(madeUpForecast({ cut: 'turkey-whole' }), 'turkey', 'IE', 'metric')
    expect(turkey.lines.map(({ id }) => id)).not.toContain('dwell-table')
    expect(turkey.whose).toContain('We hold no table for IE')
    expect(turkey.lead).not.toContain('dwell table')
  })
  it('tells how the reading that counts is taken', () => {
    const { probing } = safetyPanel(lamb, 'lamb', 'US', 'us')
    expect(probing[0]).toContain('32 °F')
    expect(probing.join(' ')).toMatch(/three spots.*lowest of the three counts.*sanitise/s)
  })
})
