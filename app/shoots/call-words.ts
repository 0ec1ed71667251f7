import type { Call, Layout } from '@/lib/day/layout'
import { formatClock } from '@/lib/plan/clock'
import type { Shoot } from '@/lib/plan/shoot'
import { celsius, formatDuration, formatTemp, instant, seconds, type UnitSystem } from '@/lib/units'
import { momentName } from './words'

/** "14:35" of an ISO time, in the shoot's zone. */
export const clockOf = (shoot: Shoot, iso: string | null) =>
  iso === null ? 'never' : formatClock(instant(Date.parse(iso)), shoot.zone)

export const windowWords = (shoot: Shoot, call: Call) => {
  const { early, late } = call.window
  if (early === null) return 'may never come'
  return late === null ? `${clockOf(shoot, early)}, or never` : `${clockOf(shoot, early)} to ${clockOf(shoot, late)}`
}

/** What tells people to come: the probe, an earlier moment, or the clock. */
export function triggerWords(call: Call, units: UnitSystem = 'metric'): string {
  if (call.trigger) return formatTemp(celsius(call.trigger.probe), units, call.trigger.probe % 1 === 0 ? 0 : 1)
  if (!call.follows) return ''
  const after = call.follows.after
  if (after < 60) return `follows ${momentName(call.follows.moment)}`
  return `${formatDuration(seconds(after))} after ${momentName(call.follows.moment)}`
}

export function standbyWords(shoot: Shoot, call: Call): string {
  const trigger = triggerWords(call)
  if (call.trigger) return `${trigger}, about ${clockOf(shoot, call.standby)}`
  return trigger || clockOf(shoot, call.standby)
}

export interface Stop {
  readonly at: string
  readonly until: string
  readonly what: string
  readonly how: string
  readonly once: boolean
}

/** One person's part of the day, in order: setups, calls, meals, tasks. */
export function slipOf(shoot: Shoot, layout: Layout, person: string): readonly Stop[] {
  const title = (id: string) => shoot.shots?.find((shot) => shot.id === id)?.title ?? id
  const shots = layout.shots
    .filter((shot) => shot.people.includes(person))
    .map((shot) => {
      const call = layout.calls.find((c) => c.for === shot.id)
      const camera = shot.camera.length > 0 ? `, camera ${shot.camera.join(' and ')}` : ''
      return {
        at: shot.setupStart,
        until: shot.end,
        what: `${title(shot.id)}${camera}`,
        how: call ? `stand by at ${standbyWords(shoot, call)}` : '',
        once: Boolean(call?.moment),
      }
    })
  const tasks = layout.tasks
    .filter((task) => task.people.includes(person))
    .map((task) => ({
      at: task.start,
      until: task.end,
      what: shoot.tasks?.find((t) => t.id === task.id)?.title ?? task.id,
      how: '',
      once: false,
    }))
  const meals = layout.meals
    .filter((meal) => meal.people.includes(person))
    .map((meal) => ({ at: meal.start, until: meal.end, what: 'Meal', how: '', once: false }))
  return [...shots, ...tasks, ...meals].sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
}
