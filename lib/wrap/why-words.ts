import type { CookerKind } from '../model/cook'
import { COOKERS } from '../model/cooker'
import { burnsSolidFuel } from '../plan/moments'
import { type Celsius, formatTemp, type Seconds, seconds, type UnitSystem } from '../units'
import type { Cause, Why } from './why'
import { capital, halfMinutes, minutesWord, uncapital } from './words'

/** Less than this is said of no cause. */
const WORTH_S = 45

/** A sentence for each cause that counts, and one for what is left over. */
export function whySentences(why: Why, kind: CookerKind, units: UnitSystem): readonly string[] {
  const told = why.causes.filter((cause) => isWorth(cause))
  const small = why.causes.filter((cause) => !isWorth(cause)).reduce((sum, { byS }) => sum + byS, 0)
  const leftS = seconds(why.unexplainedS + small)
  const fire = why.causes.find((cause) => cause.what === 'fire' && !cause.caughtUp)
  const sentences = told.map((cause) => {
    const words = causeWords(cause, kind, units)
    const both = fire && cause.what === 'meat-on' ? `${causeWords(fire, kind, units)}, and ${uncapital(words)}` : words
    return `${both}${minutesOf(cause, why.byS)}.`
  })
  return [...sentences, leftWords(leftS, why.byS, told.length)]
}
const isWorth = (cause: Cause) => Math.abs(cause.byS) >= WORTH_S || (cause.what === 'fire' && cause.caughtUp)

function causeWords(cause: Cause, kind: CookerKind, units: UnitSystem): string {
  switch (cause.what) {
    case 'fire':
      return `${burnsSolidFuel(kind) ? 'The fire was lit' : 'The cooker was switched on'} ${minutesWord(cause.lateS)} late${cause.caughtUp ? ', but it caught up' : ''}`
    case 'meat-on':
      return `The meat went ${COOKERS[kind].indoors ? 'in' : 'on'} ${cause.byS > 0 ? 'late' : 'early'}`
    case 'cooker':
      return `${placeOf(kind)} held ${formatTemp(cause.held, units)}, not ${bare(cause.asked, units)}`
    case 'lid':
      return `The lid stood open ${halfMinutes(cause.open)} minutes in all, not ${halfMinutes(cause.asked)}`
    case 'turn':
      return `The turn came ${minutesWord(cause.lateS)} ${cause.lateS > 0 ? 'late' : 'early'}`
    case 'pulled':
      return `It was pulled at ${formatTemp(cause.at, units)}, not ${bare(cause.asked, units)}`
    case 'sear':
      return `From the pull to off the heat took ${shortMin(cause.took)}, not ${shortMin(cause.asked)}`
    case 'rest':
      return `It rested ${shortMin(cause.took)}, not ${shortMin(cause.asked)}`
  }
}
const placeOf = (kind: CookerKind) =>
  kind === 'water-bath' ? 'The bath' : COOKERS[kind].indoors ? 'The oven' : 'At the grate it'
const bare = (level: Celsius, units: UnitSystem) => formatTemp(level, units).replace(/ °.$/, '')
const shortMin = (time: Seconds) => `${Math.round(time / 60)} minutes`

/** ": nine minutes", or what it gave back where it went the other way. */
function minutesOf(cause: Cause, totalS: Seconds): string {
  if (cause.what === 'fire') return ''
  const words = minutesWord(cause.byS)
  if (cause.byS > 0 === totalS >= 0) return `: ${words}`
  return totalS >= 0 ? `, which won back ${words}` : `, which cost ${words}`
}

function leftWords(leftS: Seconds, totalS: Seconds, causes: number): string {
  if (Math.abs(leftS) < WORTH_S) return causes === 0 ? 'Nothing went otherwise than planned.' : 'Nothing is left over.'
  const looks = leftS > 0 ? 'a colder start or a thicker roast' : 'a warmer start or a thinner roast'
  const same = leftS > 0 === totalS >= 0
  const minutes = `${minutesWord(leftS)} ${leftS > 0 ? 'later' : 'earlier'}`
  return `Not explained: ${same ? minutesWord(leftS) : minutes}. ${capital(looks)} would look like this.`
}

/** "Why it was later", "Why it was earlier", "What went otherwise". */
export const whyTitle = ({ byS }: Why) =>
  Math.abs(byS) < 60 ? 'What went otherwise' : byS > 0 ? 'Why it was later' : 'Why it was earlier'
