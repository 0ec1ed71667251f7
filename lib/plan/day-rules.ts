import type { Problem } from '../refusals'
import { formatDuration, type Instant, seconds } from '../units'
import { knownZone, skippedTo, toInstant } from './clock'
import { nearest, quoted } from './nearest'
import type { Shoot } from './shoot'

/** What is wrong with the day: its zone, its clock times, the room it leaves for the cook. */
export function checkDay(shoot: Shoot): Problem[] {
  const zone = knownZone(shoot.zone)
  if (zone === null) return [{ pointer: '/zone', sentence: unknownZone(shoot.zone) }]
  const skipped = clockFields(shoot).flatMap(({ pointer, clock }) => checkSkipped(shoot, pointer, clock))
  return skipped.length > 0 ? skipped : [...checkSlice(shoot), ...checkSpans(shoot)]
}

function unknownZone(written: string): string {
  const zones = Intl.supportedValuesOf('timeZone')
  const city = (zone: string) => zone.slice(zone.lastIndexOf('/') + 1)
  const byCity = zones.find((zone) => city(zone).toLowerCase() === written.trim().toLowerCase().replaceAll(' ', '_'))
  const meant = byCity ?? nearest(written, zones)
  return `There is no time zone ${quoted(written)}. ${meant ? `Did you mean "${meant}"?` : 'Write one such as "Europe/Dublin".'}`
}

type ClockField = { readonly pointer: string; readonly clock: string }
const isClock = (edge: string | undefined): edge is string => edge !== undefined && /^\d/.test(edge)

function clockFields(shoot: Shoot): ClockField[] {
  const { day } = shoot
  const edges: [string, string | undefined][] = [
    ['/day/call', day?.call],
    ['/day/wrap', day?.wrap],
    ['/day/slice/at', day?.slice && 'at' in day.slice ? day.slice.at : undefined],
    ...(shoot.shots ?? []).flatMap((shot, i): [string, string | undefined][] => [
      [`/shots/${i}/from`, shot.from],
      [`/shots/${i}/to`, shot.to],
      [`/shots/${i}/between/0`, shot.between?.[0]],
      [`/shots/${i}/between/1`, shot.between?.[1]],
      [`/shots/${i}/pin`, shot.pin],
    ]),
    ...(shoot.tasks ?? []).flatMap((task, i): [string, string | undefined][] => [
      [`/tasks/${i}/from`, task.from],
      [`/tasks/${i}/to`, task.to],
    ]),
    ...(shoot.people ?? []).flatMap(({ hours }, i): [string, string | undefined][] => [
      [`/people/${i}/hours/from`, hours?.from],
      [`/people/${i}/hours/to`, hours?.to],
    ]),
  ]
  return edges.flatMap(([pointer, clock]) => (isClock(clock) ? [{ pointer, clock }] : []))
}

function checkSkipped(shoot: Shoot, pointer: string, clock: string): Problem[] {
  const next = skippedTo(shoot, clock)
  if (next === null) return []
  return [
    {
      pointer,
      sentence: `There is no ${clock} that night: the clocks go forward and skip it. Write ${next}, or a time before the change.`,
    },
  ]
}

/** The least time from meat-on to the first slice: the stages that end by the clock. */
const leastCookS = (shoot: Shoot) =>
  Math.min(
    ...shoot.cooks.map((cook) =>
      cook.stages.reduce(
        (sum, stage) => sum + (stage.do !== 'preheat' && 'after' in stage.until ? stage.until.after : 0),
        0,
      ),
    ),
  )

function checkSlice(shoot: Shoot): Problem[] {
  const { day } = shoot
  if (!day?.call) return []
  const call = toInstant(shoot, day.call)
  const wrap = day.wrap === undefined ? undefined : toInstant(shoot, day.wrap)
  if (wrap === call)
    return [{ pointer: '/day/wrap', sentence: `The day wraps at ${day.wrap} as it is called. Write a later wrap.` }]
  if (!day.slice || !('at' in day.slice)) return []
  const slice = toInstant(shoot, day.slice.at)
  const sentence = sliceFault({
    call,
    wrap,
    slice,
    clock: day.slice.at,
    callClock: day.call,
    wrapClock: day.wrap,
    leastS: leastCookS(shoot),
  })
  return sentence ? [{ pointer: '/day/slice/at', sentence }] : []
}

interface SliceTimes {
  readonly call: Instant
  readonly wrap: Instant | undefined
  readonly slice: Instant
  readonly clock: string
  readonly callClock: string
  readonly wrapClock: string | undefined
  readonly leastS: number
}
function sliceFault({ call, wrap, slice, clock, callClock, wrapClock, leastS }: SliceTimes): string | null {
  if (wrap !== undefined && slice > wrap)
    return clock < callClock
      ? `The first slice at ${clock} would come before the meat is on: the crew is called at ${callClock}. Write a slice between the call and the wrap at ${wrapClock}.`
      : `The first slice at ${clock} comes after the wrap at ${wrapClock}. Write an earlier slice or a later wrap.`
  if (slice - call >= leastS * 1000 && slice > call) return null
  return `The first slice at ${clock} would come before the meat is on: from the call at ${callClock} the timed stages alone take ${formatDuration(seconds(leastS))}. Write a later slice or an earlier call.`
}

/** Spans of two clock times run forward, and every clock time of a shot or task lies within a day that says its ends. */
function checkSpans(shoot: Shoot): Problem[] {
  const call = shoot.day?.call === undefined ? undefined : toInstant(shoot, shoot.day.call)
  const wrap = shoot.day?.wrap === undefined ? undefined : toInstant(shoot, shoot.day.wrap)
  const inShots = clockFields(shoot).filter(
    ({ pointer }) => !pointer.startsWith('/day') && !pointer.startsWith('/people'),
  )
  const outside = inShots.filter(
    // a day without length is told at its wrap alone
    ({ clock }) => call !== undefined && wrap !== undefined && wrap > call && toInstant(shoot, clock) > wrap,
  )
  const problems = outside.map(({ pointer, clock }) => ({
    pointer,
    sentence: `${clock} is outside the day, which is from ${shoot.day?.call} to ${shoot.day?.wrap}. Write a time within it.`,
  }))
  const end = (pointer: string) => pointer.replace(/\/from$/, '/to').replace(/\/between\/0$/, '/between/1')
  const backwards = inShots.flatMap(({ pointer, clock }) => {
    const to = inShots.find((other) => other.pointer !== pointer && other.pointer === end(pointer))
    if (!to || to.clock === clock || toInstant(shoot, to.clock) > toInstant(shoot, clock)) return []
    return [
      { pointer: to.pointer, sentence: `This ends at ${to.clock}, before it begins at ${clock}. Write a later end.` },
    ]
  })
  return problems.length > 0 ? problems : backwards
}
