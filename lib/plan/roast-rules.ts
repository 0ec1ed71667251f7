import { CUSTOM, cutOf } from '../model/custom-cut'
import type { Cut } from '../model/cut'
import { CUTS } from '../model/cuts'
import { boxShare, typicalThicknessM } from '../model/shape'
import type { Problem } from '../refusals'
import { formatDuration, formatLength, formatMass, formatTemp, type Kilograms, metres } from '../units'
import { START_LOWEST_C } from './bounds'
import { listed, nearest, quoted } from './nearest'
import { checkOwnCut } from './own-cut-rules'
import type { Cook } from './shoot'
import { isWholeBird, thawOf } from './thaw'

/** What is wrong with the meat itself. */
export function checkRoast(cook: Cook, path: string): Problem[] {
  const cut = cutOf(cook.roast)
  const problems = frozen(cook, `${path}/roast/start`)
  const own = checkOwnCut(cook, cut, path)
  if (!cut && cook.roast.cut === CUSTOM) return [...own, ...problems]
  if (!cut) return [{ pointer: `${path}/roast/cut`, sentence: unknownCut(cook.roast.cut) }, ...problems]
  return [
    ...problems,
    ...own,
    ...thickness(cook, cut, `${path}/roast/thickness`),
    ...volume(cook, cut, `${path}/roast/length`),
  ]
}

function unknownCut(written: string): string {
  const ids = CUTS.map((cut) => cut.id)
  const kinds = ids.filter((each) => each.startsWith(`${written.toLowerCase()}-`))
  if (kinds.length > 0)
    return `${quoted(written)} is not in the catalogue of cuts. Did you mean ${listed(kinds.map((each) => `"${each}"`))}?`
  const meant = nearest(written, [...ids, CUSTOM, ...CUTS.map((cut) => cut.name)])
  const id = meant === CUSTOM ? CUSTOM : CUTS.find((cut) => cut.id === meant || cut.name === meant)?.id
  if (id) return `${quoted(written)} is not in the catalogue of cuts. Did you mean "${id}"?`
  const animal = written.toLowerCase().split(/[^a-z]/)[0] ?? ''
  const same = ids.filter((each) => animal !== '' && each.startsWith(`${animal}-`))
  return `${quoted(written)} is not in the catalogue of cuts. Write one such as ${listed((same.length > 0 ? same : ids).slice(0, 4).map((each) => `"${each}"`))}, or "custom" for one of your own.`
}

function frozen(cook: Cook, pointer: string): Problem[] {
  const { mass, start } = cook.roast
  if (start >= START_LOWEST_C) return []
  const thaw = thawOf(mass, isWholeBird(cook.roast.cut))
  const days = thaw.fridge / 86_400
  const water = formatDuration(thaw.water)
  const fridge = `${days} ${days === 1 ? 'day' : 'days'} in the refrigerator`
  const state = start < -5 ? 'Frozen to the middle' : `Part-frozen at ${formatTemp(start)}`
  return [
    {
      pointer,
      sentence: `${state}. Thaw it first: ${formatMass(mass)} takes ${fridge}, or ${water} in cold water changed every 30 min. Then write a start such as "4 °C".`,
    },
  ]
}

/** A measured thickness this far from the catalogue's is a slip of the unit, not an odd roast. */
const THICKNESS_RATIO = { least: 0.4, most: 2 }

function thickness(cook: Cook, cut: Cut, pointer: string): Problem[] {
  const measured = cook.roast.thickness
  if (measured === undefined || cut.id === CUSTOM) return []
  const typical = typicalThicknessM(cut, cook.roast.mass)
  const ratio = measured / typical
  if (ratio >= THICKNESS_RATIO.least && ratio <= THICKNESS_RATIO.most) return []
  const about = metres(Math.round(typical * 200) / 200)
  return [
    {
      pointer,
      sentence: `${formatLength(measured)} is too ${ratio < 1 ? 'thin' : 'thick'}: ${cut.name}, of ${formatMass(cook.roast.mass)} lies about ${formatLength(about)} (${formatLength(about, 'us')}) thick. Measure the thickest place as it lies.`,
    },
  ]
}

/** All three sides together must hold the mass, to a factor. */
function volume(cook: Cook, cut: Cut, pointer: string): Problem[] {
  const { thickness: a, width: b, length: c, mass } = cook.roast
  if (a === undefined || b === undefined || c === undefined) return []
  const kg = a * b * c * boxShare(cut.exponents) * 1045
  if (kg > (mass * cut.massShare) / 2.5 && kg < mass * 2.5) return []
  const sides = [a, b, c].map((side) => formatLength(side)).join(' × ')
  return [
    {
      pointer,
      sentence: `${sides} would weigh about ${formatMass(kg as Kilograms)}, not ${formatMass(mass)}. Measure again, or leave the length out.`,
    },
  ]
}
