import type { DayForecast } from '@/lib/day/day-forecast'
import type { DocumentEdit, Layout, PlacedShot } from '@/lib/day/layout'
import { pairScreen } from '@/lib/day/pair-screen'
import { ruleCores } from '@/lib/day/rule-core'
import { asServed } from '@/lib/day/slice-wait'
import { callWindow, clockOf, isLive, namesOf, type Sheet, triggerWords, whoWords } from '@/lib/export/call-words'
import { shotNumbers } from '@/lib/export/shot-numbers'
import type { MomentId } from '@/lib/model/moment-ids'
import { windowOf } from '@/lib/model/quantiles'
import { fromIso } from '@/lib/plan/clock'
import { momentName } from '@/lib/plan/moments'
import type { Shoot, Shot } from '@/lib/plan/shoot'
import { formatShare, type UnitSystem } from '@/lib/units'
import { fromToWho } from '../../../words/day'

/** What the day screen shows of a layout; made on the server, and in the browser while something is tried out. Times: ms. */
export interface DayView {
  readonly rows: readonly ShotRow[]
  readonly axis: DayAxis
  /** The likely first slice of the first cook. */
  readonly slice: number | null
  readonly misfits: readonly Misfit[]
  /** Every shift of every task: "18:05 to 18:10, cam-1". */
  readonly tasks: readonly { readonly id: string; readonly words: string }[]
  readonly holds: readonly (readonly [figure: string, words: string])[]
  /** Which two moments one camera may not have both of, the worst first. */
  readonly pairs: readonly string[]
}
export interface DayAxis {
  readonly from: number
  readonly to: number
  readonly hours: readonly { readonly at: number; readonly words: string }[]
}
export interface ShotRow {
  readonly id: string
  readonly number: number
  readonly kind: 'moment' | 'free' | 'drop'
  readonly likely: string
  readonly camera: string
  readonly people: string
  readonly peopleIds: readonly string[]
  readonly standby: string
  readonly window: string
  readonly tentative: boolean
  readonly place: { readonly setup: number; readonly start: number; readonly end: number } | null
  /** From early to late, where a moment says when it comes. */
  readonly reach: readonly [number, number] | null
}
/** What does not fit, in a sentence, and the one change that would save it. */
export interface Misfit {
  readonly key: string
  readonly title: string | null
  readonly why: string
  /** The fewest shots that cannot all be had, this one of them. */
  readonly rivals: string | null
  readonly way: string | null
  /** The change as edits of the document, where it is one. */
  readonly edits: readonly DocumentEdit[] | null
  /** Nobody is named for a burning fire: the watch on offer would mend it. */
  readonly unwatched: boolean
}

const MOST_PAIRS = 8

type Forecasts = ReadonlyMap<string, DayForecast>
export function dayViewOf(shoot: Shoot, layout: Layout, forecasts: Forecasts, units: UnitSystem): DayView {
  const sheet: Sheet = { shoot, layout, units }
  return {
    rows: rowsOf(sheet),
    axis: axisOf(sheet),
    slice: sliceOf(sheet, forecasts),
    misfits: misfitsOf(sheet, forecasts),
    tasks: layout.tasks.map(({ id, start, end, people }) => ({
      id,
      words: fromToWho(clockOf(sheet, start), clockOf(sheet, end), namesOf(sheet, people)),
    })),
    holds: holdsOf(sheet),
    pairs: pairScreen(shoot, forecasts, layout)
      .slice(0, MOST_PAIRS)
      .map(({ sentence }) => sentence),
  }
}

function sliceOf({ shoot, layout }: Sheet, forecasts: Forecasts): number | null {
  const first = shoot.cooks[0]?.id ?? ''
  const forecast = forecasts.get(first)
  const meatOn = layout.meatOn[first] ?? layout.start
  const times = forecast && asServed(shoot, first, forecast, meatOn).moments['first-slice']
  const likelyS = times ? windowOf(times).likely : null
  return likelyS === null ? null : fromIso(meatOn) + likelyS * 1000
}

const ms = (iso: string | null | undefined) => (iso ? fromIso(iso) : null)

function rowsOf(sheet: Sheet): readonly ShotRow[] {
  const numbers = shotNumbers(sheet.shoot)
  const live = liveStretch(sheet.layout)
  const rows = (sheet.shoot.shots ?? []).map((shot) => rowOf(sheet, shot, numbers.get(shot.id) ?? 0, live))
  return rows.sort((a, b) => a.at - b.at).map(({ row }) => row)
}

function rowOf(sheet: Sheet, shot: Shot, number: number, live: Stretch) {
  const { layout } = sheet
  const placed = layout.shots.find((p) => p.id === shot.id)
  const call = layout.calls.find((c) => c.for === shot.id && c.moment !== null)
  const likely = call?.window.likely ?? placed?.start ?? null
  const trigger = call ? triggerWords(sheet, call) : ''
  const standby = call && clockOf(sheet, call.standby)
  const [early, late] = [ms(call?.window.early), ms(call?.window.late)]
  const row: ShotRow = {
    id: shot.id,
    number,
    kind: placed ? (call ? 'moment' : 'free') : 'drop',
    likely: placed ? clockOf(sheet, likely) : '',
    camera: placed?.camera.join(' ') ?? '',
    people: placed ? whoWords(sheet, { people: placed.people, camera: [] }) : '',
    peopleIds: placed?.people ?? [],
    standby: call && isLive(call) ? (call.trigger ? `${trigger}, about ${standby}` : trigger) : (standby ?? ''),
    window: call ? callWindow(sheet, call) : '',
    tentative: placed?.hold === 'tentative' && mayBeCut(live, placed),
    place: placed
      ? { setup: fromIso(placed.setupStart), start: fromIso(placed.start), end: fromIso(placed.end) }
      : null,
    reach: placed && early !== null && late !== null && late > early ? [early, late] : null,
  }
  return { row, at: ms(likely) ?? Number.POSITIVE_INFINITY }
}

type Stretch = readonly [number, number]
/** While a moment that is called live may come. */
function liveStretch(layout: Layout): Stretch {
  const live = layout.calls.filter((call) => isLive(call) && call.window.early)
  const at = (iso: string | null) => ms(iso) ?? 0
  return [
    Math.min(...live.map(({ window }) => at(window.early))),
    Math.max(...live.map(({ window }) => at(window.late ?? window.early))),
  ]
}
const mayBeCut = ([from, to]: Stretch, { start }: PlacedShot) => fromIso(start) >= from && fromIso(start) <= to

const HOUR = 3_600_000
const MARGIN = 10 * 60_000
/** A day that is all on one screen: whole hours of the zone where they fall, not too many of them. */
function axisOf(sheet: Sheet): DayAxis {
  const { layout } = sheet
  const from = Math.min(fromIso(layout.crewCall), ...layout.shots.map((s) => fromIso(s.setupStart))) - MARGIN
  const to = Math.max(fromIso(layout.wrap), ...layout.shots.map((s) => fromIso(s.end))) + MARGIN
  const every = ([1, 2, 3, 4, 6].find((n) => (to - from) / (n * HOUR) <= 7) ?? 12) * HOUR
  const first = firstHour(sheet, from)
  const hours = []
  for (let at = first; at <= to; at += every) hours.push({ at, words: clockOf(sheet, new Date(at).toISOString()) })
  return { from, to, hours }
}
/** The first minute on or after `from` that the zone's clock calls :00. */
function firstHour(sheet: Sheet, from: number): number {
  const minute = Math.ceil(from / 60_000) * 60_000
  const past = Number(clockOf(sheet, new Date(minute).toISOString()).slice(3))
  return minute + ((60 - past) % 60) * 60_000
}

function misfitsOf({ shoot, layout }: Sheet, forecasts: Forecasts): Misfit[] {
  const cores = layout.dropped.length > 0 ? ruleCores(shoot, forecasts, layout) : []
  const numbers = shotNumbers(shoot)
  const named = (id: string) => {
    const shot = shoot.shots?.find((each) => each.id === id)
    return `${numbers.get(id)} ${shot?.title}${shot?.priority === 'must' ? ', a must' : ''}`
  }
  return [
    ...layout.dropped.map((drop) => ({
      key: drop.id,
      title: named(drop.id),
      why: drop.why,
      rivals: cores.find(({ dropped, shots }) => dropped === drop.id && shots.length > 1)?.sentence ?? null,
      way: drop.price ? `${drop.wouldSave} ${drop.price}` : drop.wouldSave,
      edits: drop.edits ?? null,
      unwatched: false,
    })),
    // A must that was dropped is told once, with the others that were.
    ...layout.conflicts
      .filter(({ rule }) => rule !== 'must-dropped')
      .map(({ sentence, rule }) => ({
        key: sentence,
        title: null,
        why: sentence,
        rivals: null,
        way: null,
        edits: null,
        unwatched: rule === 'fire-unwatched',
      })),
  ]
}

/** A sample of cooks never makes certain. */
const chance = (share: number) => (share > 0.995 ? 'over 99 %' : formatShare(share))

function holdsOf(sheet: Sheet): DayView['holds'] {
  const { shoot, layout } = sheet
  const each = Object.entries(layout.capture.each)
  const [worst] = [...each].sort((a, b) => a[1] - b[1])
  const kind = shoot.cooks[0]?.cooker.kind ?? 'oven'
  const caught: DayView['holds'] = worst
    ? [
        [
          chance(worst[1]),
          `chance that each moment is caught, at worst (${momentName(worst[0].split('/').at(-1) as MomentId, kind)})`,
        ],
        [chance(layout.capture.joint), `that all ${each.length} are`],
      ]
    : []
  return [
    [clockOf(sheet, layout.crewCall), 'crew call'],
    ...caught,
    ...layout.meals.map(
      (meal) =>
        [clockOf(sheet, meal.start), `meal, to ${clockOf(sheet, meal.end)}: ${namesOf(sheet, meal.people)}`] as const,
    ),
    [clockOf(sheet, layout.wrap), 'wrap'],
  ]
}
