/** The table of README's "How good is it", from the same samples that the tests gate. */
import { conductionScore } from './conduction-line'
import { CHART, chartSample, meanOf, type Sample, scoreOf, worstOf } from './measure'
import { conduction3d, conductivityRaw, handbookLosses, heatCapacity, leanYields } from './samples'

const percent = (share: number, digits: number) => `${(100 * share).toFixed(digits)} %`
const errors = (name: string, samples: readonly Sample[], digits: number) =>
  `| ${name} | ${samples.length} | off by ${percent(meanOf(samples), digits)} on average, ${percent(worstOf(samples), digits)} at worst |`

function roastingTimes(): string {
  const scored = CHART.map(chartSample).filter((sample) => sample.row.role === 'score')
  const { n, share, median, logSd } = scoreOf(scored)
  const misses = scored.filter((sample) => !sample.met).length
  return `| Open roasting timetables, rows not fitted to | ${n} | ${percent(share, 0)} met by weight, ${misses} rows missed; median of model over table ${median.toFixed(2)}, log-sd ${logSd.toFixed(3)} |`
}

/** What is to be beaten: plain conduction on the same rows, the skin at 100 °C throughout. */
function conductionAlone(): string {
  const { n, share, median, logSd } = conductionScore()
  return `| The same rows by conduction alone, skin at 100 °C, times 1.40 | ${n} | ${percent(share, 0)} met by weight; median ${median.toFixed(2)}, log-sd ${logSd.toFixed(3)} |`
}

export const headline = (): readonly string[] => [
  '| Compared with | n | Result |',
  '| --- | --- | --- |',
  roastingTimes(),
  conductionAlone(),
  errors('Handbook losses of mass (of the raw mass)', handbookLosses(), 1),
  errors('Lean yields from protein kept (upper-side estimates)', leanYields(), 1),
  errors('Heat capacity of meats', heatCapacity(), 1),
  errors('Thermal conductivity of raw meats', conductivityRaw(), 1),
  errors('Conduction in three dimensions, time', conduction3d(), 2),
]
