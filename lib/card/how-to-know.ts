import { STEADY_FOR_S, STEADY_K } from '../model/cooker'
import { isPoultry } from '../model/dwell-table'
import type { Forecast } from '../model/forecast'
import { minimumFor } from '../model/minimums'
import type { MomentId } from '../model/moment-ids'
import { spreadOf } from '../model/quantiles'
import { momentName } from '../plan/moments'
import { celsius, formatRise, formatTempBoth, kelvins } from '../units'
import { authorityWords, type Judged } from './doneness-rows'
import { between, probeAt, stagesOf } from './figures'
import { minimumWords, settingWords, timeWords } from './wording'

/** One stage of the cook: the reading that says it has come, and roughly when that is. */
export interface KnowRow {
  readonly id: 'steady' | 'turn' | 'pull' | 'sear' | 'off' | 'rest' | 'slice'
  readonly stage: string
  readonly know: string
  /** "2 h 05 to 3 h 10 after the meat goes on"; empty where nobody need wait for it. */
  readonly roughly: string
}

/** The window from one moment to another, where most cooks come to it and it is worth a wait. */
function window(f: Forecast, from: MomentId, to: MomentId): string | null {
  const samples = between(f, from, to)
  const spread = samples && spreadOf<number>(samples)
  return spread && Number.isFinite(spread.likely) && spread.likely >= 60 ? timeWords(spread) : null
}
const about = (level: number) => formatTempBoth(celsius(Math.round(level)))
const since = (time: string | null, after: string) => (time ? `${time} after ${after}` : '')

function steady(f: Forecast): KnowRow[] {
  const { kind } = f.cook.cooker
  const at = stagesOf(f, 'preheat').at(-1)?.at
  if (!f.moments['cooker-steady'] || at === undefined) return []
  const slack = `${formatRise(kelvins(STEADY_K))} / ${formatRise(kelvins(STEADY_K), 'us')}`
  const lit = momentName('fire-lit', kind) === 'fire lit' ? 'lighting' : 'switching on'
  return [
    {
      id: 'steady',
      stage: momentName('cooker-steady', kind),
      know: `It has read ${settingWords(at)}, give or take ${slack}, for ${STEADY_FOR_S / 60} min.`,
      roughly: since(window(f, 'fire-lit', 'cooker-steady'), lit),
    },
  ]
}

const on = (f: Forecast) => `the ${momentName('meat-on', f.cook.cooker.kind).replace('meat', 'meat goes')}`
function turn(f: Forecast): KnowRow[] {
  const read = probeAt(f, 'turn')
  if (!read) return []
  const roughly = since(window(f, 'meat-on', 'turn'), on(f))
  return [{ id: 'turn', stage: 'turn', know: `The middle reads about ${about(read.likely)}.`, roughly }]
}

function pull(f: Forecast): KnowRow {
  const until = stagesOf(f, 'roast').at(-1)?.until
  const read = probeAt(f, 'pull')
  const core = until && 'core' in until ? formatTempBoth(until.core) : read && `about ${about(read.likely)}`
  return {
    id: 'pull',
    stage: 'pull',
    know: core ? `The probe reads ${core} in the thickest part.` : 'It does not get there in most cooks.',
    roughly: since(window(f, 'meat-on', 'pull'), on(f)),
  }
}

function sear(f: Forecast): KnowRow[] {
  const stage = stagesOf(f, 'sear')[0]
  if (!stage) return []
  const place = stage.over === 'direct' ? 'The fire under it' : 'The cooker'
  const read =
    'core' in stage.until
      ? formatTempBoth(stage.until.core)
      : `about ${about(spreadOf<number>(f.offHeat.probeC).likely)}`
  return [
    {
      id: 'sear',
      stage: 'sear',
      know: `${place} reads about ${settingWords(stage.at)}.`,
      roughly: since(window(f, 'pull', 'sear-start'), 'the pull'),
    },
    {
      id: 'off',
      stage: 'off the heat',
      know: `The probe reads ${read}.`,
      roughly: since(window(f, 'pull', 'off-heat'), 'the pull'),
    },
  ]
}

/** The coldest of three readings ends the rest; of a bird the minimum does, whatever the clock says. */
function rest(f: Forecast, card: Judged): KnowRow[] {
  const coldest = spreadOf<number>(f.atSlice.coreC)
  if (!Number.isFinite(coldest.likely)) return []
  const minimum = minimumFor({ animal: card.animal }, card.authority)
  const level = formatTempBoth(celsius(minimum.tempC))
  const ends = isPoultry(card.animal)
    ? `The coldest of thighs and breast reads ${level} or more; not before.`
    : `The coldest of three spots reads about ${about(coldest.likely)}.`
  return [
    {
      id: 'rest',
      stage: 'rest',
      know: ends,
      roughly: since(window(f, 'off-heat', 'first-slice'), 'it leaves the heat'),
    },
    {
      id: 'slice',
      stage: 'slice',
      know: `The authority’s minimum is ${minimumWords(minimum)}, at the coldest spot: ${authorityWords(card, f, 0)}.`,
      roughly: '',
    },
  ]
}

/** What to go by at each stage of this cook: temperatures, with the minutes only as a guide. */
export const howToKnow = (card: Judged, f: Forecast): readonly KnowRow[] => [
  ...steady(f),
  ...turn(f),
  pull(f),
  ...sear(f),
  ...rest(f, card),
]
