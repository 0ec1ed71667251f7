import type { DayState, Take } from '../log/day-state'
import { formatClockSeconds } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { type Instant, instant } from '../units'
import { type ClipInDay, clipsInDay, placesAt } from './clip-times'
import { csvOf } from './csv'

/** One take, with where in which clip it stands. */
export interface TakeRow {
  readonly best: boolean
  readonly shot: string
  readonly slate: string
  readonly take: number
  readonly camera: string
  readonly clip: string
  readonly timecodeIn: string
  readonly timecodeOut: string
  /** By the clock on the set, "18:42:07". */
  readonly clockIn: string
  readonly clockOut: string
  readonly verdict: string
  readonly note: string
}

const VERDICTS = { good: 'good', 'no-good': 'no good', hold: 'hold' } as const

/** All takes, shot by shot in the plan's order, the best of each shot and camera first. */
export function takeRows(shoot: Shoot, day: DayState): readonly TakeRow[] {
  const shots = shoot.shots ?? []
  const clips = clipsInDay(shoot, day)
  const order = (take: Take) => {
    const at = shots.findIndex(({ id }) => id === take.shot)
    return at < 0 ? shots.length : at
  }
  return [...day.takes]
    .sort(
      (a, b) =>
        order(a) - order(b) ||
        (a.camera < b.camera ? -1 : a.camera > b.camera ? 1 : rank(a) - rank(b)) ||
        b.take - a.take,
    )
    .map((take, i, all) => {
      const before = all[i - 1]
      const first = !before || before.shot !== take.shot || before.slate !== take.slate || before.camera !== take.camera
      const title = shots.find(({ id }) => id === take.shot)?.title ?? take.shot ?? ''
      return { best: first && take.verdict === 'good', shot: title, ...rowOf(take, clips, shoot.zone) }
    })
}
/** Of two good ones the later: one goes on until it is right. */
const rank = ({ verdict }: Take) => (verdict === 'good' ? 0 : verdict === 'hold' ? 1 : verdict === null ? 2 : 3)

function rowOf(take: Take, clips: readonly ClipInDay[], zone: string): Omit<TakeRow, 'best' | 'shot'> {
  const clip = clipOfTake(take, clips)
  const labelAt = (at: Instant | null) =>
    clip && at !== null ? placesAt([clip], instant(Math.min(Math.max(at, clip.from), clip.to)))[0]?.timecode : undefined
  return {
    slate: take.slate ?? '',
    take: take.take,
    camera: take.camera,
    clip: clip?.clip.id ?? '',
    timecodeIn: labelAt(take.from) ?? take.timecode ?? '',
    timecodeOut: labelAt(take.to) ?? '',
    clockIn: clockOf(take.from, zone),
    clockOut: clockOf(take.to, zone),
    verdict: take.verdict === null ? '' : VERDICTS[take.verdict],
    note: [...new Set(take.notes)].join(' / '),
  }
}
/** A thumb is never on the frame: the clip that shows most of the take is its own. */
function clipOfTake({ camera, from, to }: Take, clips: readonly ClipInDay[]): ClipInDay | undefined {
  if (from === null) return undefined
  const shared = (one: ClipInDay) => Math.min(one.to, to ?? one.to) - Math.max(one.from, from)
  const own = clips.filter((one) => one.clip.camera === camera && shared(one) > 0)
  return own.sort((a, b) => shared(b) - shared(a))[0]
}
const clockOf = (at: Instant | null, zone: string) => (at === null ? '' : formatClockSeconds(at, zone))

const HEAD = [
  'best',
  'shot',
  'slate',
  'take',
  'camera',
  'clip',
  'timecode in',
  'timecode out',
  'clock in',
  'clock out',
  'verdict',
  'note',
]

/** The list as a table for whoever cuts; a line of its own says where readings were invented. */
export function takesCsv(rows: readonly TakeRow[], invented: string | null): string {
  const cells = rows.map((row) => [
    row.best ? 'yes' : '',
    row.shot,
    row.slate,
    String(row.take),
    row.camera,
    row.clip,
    row.timecodeIn,
    row.timecodeOut,
    row.clockIn,
    row.clockOut,
    row.verdict,
    row.note,
  ])
  const mark = invented === null ? [] : [HEAD.map((_, i) => (i === HEAD.length - 1 ? invented : ''))]
  return csvOf([HEAD, ...cells, ...mark])
}
