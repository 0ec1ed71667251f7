import type { DayState } from '../log/day-state'
import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import { momentName } from '../plan/moments'
import type { Cook, Shoot, Shot } from '../plan/shoot'

/** A shot that the day did not give, and how it can still be had. */
export interface PickUp {
  readonly shot: string
  readonly number: number
  readonly title: string
  readonly priority: string
  readonly became: string
  /** What it wants of the food, in words. */
  readonly wants: string
  /** How it can still be had, in a sentence. */
  readonly how: string
  readonly otherRoast: boolean
}

/** Every shot of the plan without a good take. */
export function pickUpsOf(shoot: Shoot, day: DayState): readonly PickUp[] {
  return (shoot.shots ?? []).flatMap((shot, i) => {
    const became = becameOf(shot, day)
    if (became === null) return []
    const { id, title, priority = 'should' } = shot
    return [{ shot: id, number: i + 1, title, priority, became, ...stillToBeHad(shoot, shot, day) }]
  })
}

function becameOf({ id }: Shot, day: DayState): string | null {
  const state = day.shots[id]?.state
  const takes = day.takes.filter(({ shot }) => shot === id)
  if (state === 'missed' || state === 'dropped') return state
  if (state === 'caught' || takes.some(({ verdict }) => verdict === 'good')) return null
  if (takes.length === 0) return 'no take in the log'
  return takes.some(({ verdict }) => verdict !== 'no-good') ? 'no take called good' : 'no good take'
}

type Had = Pick<PickUp, 'wants' | 'how' | 'otherRoast'>
/** How long food keeps a look: common practice, no source. */
function stillToBeHad(shoot: Shoot, shot: Shot, day: DayState): Had {
  const cook = shoot.cooks.find(({ id }) => id === shot.cook) ?? shoot.cooks[0]
  if (!cook) return noFood(shot)
  if (shot.at) return ofMoment(shoot, shot, cook, day)
  switch (shot.state) {
    case undefined:
      return between(shot, cook)
    case 'raw':
    case 'seasoned':
      return anotherRoast(
        `the roast ${shot.state}`,
        'Any roast of the same cut and size will do before it goes on: it need not be cooked for this.',
      )
    case 'sliced':
      return slices(cook, day)
    case 'rested':
      return sliced(cook, day)
        ? anotherRoast('the roast whole and rested', 'It has been cut: only another roast will do.')
        : whole
    default:
      return anotherRoast(`the roast ${shot.state}`, 'That is over within minutes: only another roast will do.')
  }
}

const cookWord = (cook: Cook) => (cook.cooker.kind.endsWith('oven') ? 'oven' : 'fire')
const noFood = ({ light }: Shot): Had => ({
  wants: light ? `no food, ${light.replaceAll('-', ' ')}` : 'no food',
  how: light ? 'Any day in the same light and clothes.' : 'Any day in the same clothes.',
  otherRoast: false,
})
const anotherRoast = (wants: string, how: string): Had => ({ wants, how, otherRoast: true })
const whole: Had = {
  wants: 'the roast whole and rested',
  how: 'It has not been cut yet: take it now, within 30 min of the rest.',
  otherRoast: false,
}
const sliced = ({ id }: Cook, day: DayState) => day.marks[`${id}/first-slice`] !== undefined

/** A shot between two moments wants what is going on there. */
function between(shot: Shot, cook: Cook): Had {
  const [from, to] = shot.between ?? [shot.from, shot.to]
  const place = (edge: unknown) => MOMENT_IDS.indexOf(edge as MomentId)
  const fire = cookWord(cook)
  if (from === undefined && to === undefined) return noFood(shot)
  if (place(to) >= 0 && place(to) <= place('meat-on'))
    return {
      wants: `the ${fire} made ready`,
      how: `Whenever the ${fire} is on again: no roast is needed.`,
      otherRoast: false,
    }
  const wants = place(from) >= place('off-heat') ? 'the roast resting' : `the ${fire} at work`
  return anotherRoast(wants, 'It wants a cook under way: only another roast has it.')
}

/** A roast that is still on its way may come to it yet. */
function ofMoment(shoot: Shoot, { at }: Shot, cook: Cook, day: DayState): Had {
  const moment = at?.moment ?? 'meat-on'
  const wants = `${momentName(moment, cook.cooker.kind)}, as it happens`
  const ahead = shoot.cooks.find((one) => isUnderWay(one, day) && !isPast(one, moment, day))
  if (ahead)
    return {
      wants,
      how: `${ahead.id === cook.id ? 'It has' : `Roast "${ahead.id}" has`} not come to it yet by the log: take it then.`,
      otherRoast: false,
    }
  return anotherRoast(wants, 'It happens once in a cook: only another roast has it.')
}

const isUnderWay = ({ id }: Cook, day: DayState) =>
  day.marks[`${id}/meat-on`] !== undefined && day.food[id]?.is !== 'discarded'
/** Marked itself, or something that comes after it. */
const isPast = ({ id }: Cook, moment: MomentId, day: DayState) =>
  MOMENT_IDS.slice(MOMENT_IDS.indexOf(moment)).some((one) => day.marks[`${id}/${one}`] !== undefined)

function slices(cook: Cook, day: DayState): Had {
  const wants = 'the roast sliced'
  const gone = day.food[cook.id]?.is
  if (!sliced(cook, day))
    return {
      wants,
      how: 'It has not been cut yet by the log: take it within 20 min of the first slice.',
      otherRoast: false,
    }
  if (gone === 'served' || gone === 'discarded')
    return anotherRoast(wants, `The meat was ${gone}: only another roast will do.`)
  return {
    wants,
    how: 'Cold slices will do for a wide or a plate, for the picture only; a fresh cut face lasts 20 min, then only another roast will do.',
    otherRoast: false,
  }
}

/** "2 of 5 want another roast: one more gives them all." */
export function pickUpSummary(all: readonly PickUp[]): string {
  if (all.length === 0) return 'Every shot of the plan has a good take.'
  const want = all.filter(({ otherRoast }) => otherRoast).length
  const shots = all.length === 1 ? 'One shot has' : `${all.length} shots have`
  if (want === 0) return `${shots} no good take; none wants another roast.`
  return `${shots} no good take; ${want === 1 ? 'one wants' : `${want} want`} another roast.`
}
