import type { ShotFact } from './heat-line-facts'
import type { Frame } from './heat-line-frame'
import { BOX, type Box, CAMERA_LANE, type Lane, spread, x } from './heat-line-lane-boxes'
import { LETTERING } from './heat-line-sheet'
import { textWidth } from './text-width'

/** Shots at one place with no longer pause between them are one stretch of work. */
const PAUSE_MS = 10 * 60_000

/** A lane for every place, in the order in which the day comes to it; each box is a stretch of work there. */
export function placeLanes(all: readonly ShotFact[], frame: Frame, now: number | null): Lane[] {
  const shots = [...all].sort((a, b) => a.setup - b.setup)
  const placeOf = ({ place }: ShotFact) => place ?? 'anywhere'
  const places = [...new Set(shots.map(placeOf))]
  return places.map((place, i) => ({
    name: place,
    person: null,
    top: frame.lanes + i * CAMERA_LANE,
    height: CAMERA_LANE,
    boxes: spread(
      stretchesOf(shots.filter((shot) => placeOf(shot) === place)).map((run) => boxOf(run, frame, now)),
      frame.right,
    ),
    bars: [],
  }))
}

function stretchesOf(shots: readonly ShotFact[]): ShotFact[][] {
  const runs: ShotFact[][] = []
  let end = Number.NEGATIVE_INFINITY
  for (const shot of shots) {
    if (shot.setup > end + PAUSE_MS) runs.push([])
    runs.at(-1)?.push(shot)
    end = Math.max(end, shot.end)
  }
  return runs
}

/** Filled where a moment is among them: that time is the meat's. */
function boxOf(run: readonly ShotFact[], frame: Frame, now: number | null): Box {
  const first = run[0] as ShotFact
  const end = Math.max(...run.map((shot) => shot.end))
  const x1 = x(frame, first.setup)
  const x2 = Math.max(x1 + BOX.least, x(frame, end))
  const long = `${run.length} ${run.length === 1 ? 'shot' : 'shots'}`
  return {
    id: (run.find((shot) => shot.hard) ?? first).id,
    number: [long, String(run.length)].find((words) => textWidth(words, LETTERING.number) + 6 <= x2 - x1) ?? '',
    name: run.some((shot) => shot.hard) ? null : '',
    live: run.some((shot) => shot.live),
    past: now !== null && end <= now,
    x1,
    x2,
  }
}
