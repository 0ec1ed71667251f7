import { describe, expect, it } from 'vitest'
import { layOutDay } from '../../../lib/day/lay-out'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { fastestKernel } from '../../../lib/model/kernels'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { documentWarnings } from '../../../lib/plan/document-warnings'
import { setAt, shotsOf } from '../../../lib/plan/edit'
import { withCoverage } from '../../../lib/plan/new-shoot'
import { problemsForLayout } from '../../../lib/plan/parse'
import { SAMPLES } from '../../../lib/plan/samples'
import { read } from './shoots'

const AROUND = { date: '2027-05-15', zone: 'Europe/Dublin', place: { lat: 53.35, lon: -6.26, altitude: '20 m' } }
/** Enough to see whether the plan works. */
const MEMBERS = 64
const SWEEPS = 60

describe.each(SAMPLES.map((sample) => [sample.title, sample] as const))('the sample "%s"', (title, sample) => {
  const document = sample.document(AROUND)
  const shoot = read(document)
  const options = { seed: 1, members: MEMBERS, kernel: fastestKernel() }
  const forecasts = new Map(shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), options)]))

  it('reads, bears its own title and says what is worth filming in one line', () => {
    expect(document.title).toBe(title)
    expect(problemsForLayout(shoot)).toEqual([])
    expect(sample.says.length).toBeLessThan(90)
  })

  it('comes to its slice in at least 9 cooks of 10, as done as it says', () => {
    const slices = forecasts.get('hero')?.moments['first-slice'] ?? []
    expect([...slices].filter(Number.isFinite).length).toBeGreaterThanOrEqual(0.9 * MEMBERS)
    const codes = documentWarnings(shoot, forecasts).map(({ code }) => code)
    expect(codes).not.toContain('target-disagrees')
  })

  it('lays out with every shot and without a conflict', () => {
    const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps: SWEEPS })
    expect(layout.conflicts).toEqual([])
    expect(layout.dropped).toEqual([])
    expect(layout.shots.length).toBe(shotsOf(document).length)
  })

  it('keeps its shots when a field is typed in', () => {
    const ids = shotsOf(document).map(({ id }) => id)
    const typed = withCoverage(setAt(document, '/cooks/0/roast/mass', '4 kg'))
    expect(shotsOf(typed).map(({ id }) => id)).toEqual(ids)
  })
})
