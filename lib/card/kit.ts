import type { Forecast } from '../model/forecast'
import { fuelSummary } from '../model/fuel-need'
import { massWords } from './wording'

/** From here on the fire calls for long tongs and gloves. Common practice, no source. */
const HOT_C = 230

function fuelWords(f: Forecast): string[] {
  const need = fuelSummary(f)
  if (need) return [`${need.kind}, ${massWords(need.take)}`]
  return f.cook.cooker.kind.endsWith('charcoal') ? ['charcoal'] : []
}

/** What the plan's own stages ask for, then the author's; common practice, no source. */
export function kitOf(f: Forecast, own: readonly string[] = []): string[] {
  const { stages } = f.cook
  const probe = stages.some((s) => s.do === 'roast' && s.probe)
  const byCore = stages.some((s) => s.do !== 'preheat' && 'core' in s.until)
  const hot = stages.some((s) => s.do === 'sear' && s.at >= HOT_C)
  const rest = stages.find((s) => s.do === 'rest')
  const bath = f.cook.cooker.kind === 'water-bath'
  const kit = [
    ...fuelWords(f),
    probe ? 'a probe thermometer' : byCore ? 'a thermometer' : '',
    hot ? 'long tongs' : '',
    hot ? 'heat-proof gloves' : '',
    bath ? 'bags that stand the heat' : '',
    stages.some((s) => s.do === 'hold' && s.in === 'box') ? 'an insulated box' : '',
    rest ? 'a board with a groove' : '',
    rest?.cover === 'tent' ? 'foil' : '',
    ...own.map((thing) => thing.trim()),
  ]
  return kit.filter(Boolean)
}
