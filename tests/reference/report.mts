/** Prints what the reference tests gate: n, mean, median, 90 % and worst of every comparison, and each roasting row. */

import { tablesInShards } from '../twins/in-shards'
import { printed } from '../twins/table'
import { conductionScore } from './conduction-line'
import { GATES } from './gates'
import { headline } from './headline'
import { ASIDE, CHART, chartSample, meanOf, type Sample, scoreOf, worstOf } from './measure'
import { conduction3d, conductivityRaw, handbookLosses, heatCapacity, leanYields, shapeResidual } from './samples'

const quantile = (samples: readonly Sample[], q: number) => {
  const sorted = samples.map((s) => Math.abs(s.error)).sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] as number
}
const line = (name: string, samples: readonly Sample[], unit: string) => {
  const f = (x: number) => x.toFixed(4)
  const figures = [meanOf(samples), quantile(samples, 0.5), quantile(samples, 0.9), worstOf(samples)].map(f).join('  ')
  console.log(
    `${name.padEnd(30)} n ${String(samples.length).padStart(3)}  mean, p50, p90, worst: ${figures}  (${unit})`,
  )
}
line('choi-okos/heat-capacity', heatCapacity(), GATES['choi-okos/heat-capacity'].unit)
line('choi-okos/conductivity-raw', conductivityRaw(), GATES['choi-okos/conductivity-raw'].unit)
line('conduction-3d/time', conduction3d(), GATES['conduction-3d/time'].unit)
line('shape/residual', shapeResidual(), GATES['shape/residual'].unit)
line('losses/handbook', handbookLosses(), GATES['losses/handbook'].unit)
for (const s of handbookLosses()) console.log(`  ${s.label}: ${(100 * s.error).toFixed(1)} points`)
for (const s of leanYields()) console.log(`  yield of ${s.label}: ${(100 * s.error).toFixed(1)} points`)

const samples = CHART.map(chartSample)
for (const s of [...samples, ...ASIDE.map(chartSample)]) {
  const scored = s.met ? 'met' : 'MISS'
  const mark = s.row.role === 'calibration' ? 'fitted' : s.row.role === 'score' ? scored : s.row.role
  console.log(
    `${mark.padEnd(13)}${s.ratio.toFixed(2)}  ${s.modelMin.toFixed(0)} min against ${s.row.minutes.join('-')}  ${s.label}`,
  )
}
const score = scoreOf(samples.filter((s) => s.row.role === 'score'))
const bare = conductionScore()
console.log(
  `conduction alone, skin at 100 °C, x 1.40: share met ${bare.share.toFixed(3)}, median ratio ${bare.median.toFixed(3)}, log-sd ${bare.logSd.toFixed(3)}`,
)
console.log(
  `roasting-times/score: n ${score.n}, weight ${score.weight}, share met ${score.share.toFixed(3)}, median ratio ${score.median.toFixed(3)}, log-sd ${score.logSd.toFixed(3)}`,
)
/** Of each kind in each family; `npm run report -- 100` takes as many as the proof. */
const TWINS_EACH = 2
console.log(`\n${printed(await tablesInShards(1, Number(process.argv[2] ?? TWINS_EACH)))}`)
console.log(`\nFor README:\n\n${headline().join('\n')}`)
