import type { Layout, PlacedShot } from '../day/layout'
import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import type { Frame } from './heat-line-frame'
import { BOX, type Box, CAMERA_LANE, type Lane, spread, x } from './heat-line-lane-boxes'
import { LETTERING } from './heat-line-sheet'
import { isCalledLive } from './lanes'
import { textWidth } from './text-width'

/** Shots at one place with no longer pause between them are one stretch of work. */
const PAUSE_MS = 10 * 60_000

/** A lane for every place, in the order in which the day comes to it; each box is a stretch of work there. */
export function placeLanes(shoot: Shoot, layout: Layout, frame: Frame): Lane[] {
  const shots = [...layout.shots].sort((a, b) => fromIso(a.setupStart) - fromIso(b.setupStart))
  const placeOf = ({ id }: PlacedShot) => shoot.shots?.find((shot) => shot.id === id)?.place ?? 'anywhere'
  const places = [...new Set(shots.map(placeOf))]
  return places.map((place, i) => ({
    name: place,
    person: null,
    top: frame.lanes + i * CAMERA_LANE,
    height: CAMERA_LANE,
    boxes: spread(stretchesOf(shots.filter((shot) => placeOf(shot) === place)).map((run) => boxOf(run, layout, frame))),
    bars: [],
  }))
}

function stretchesOf(shots: readonly PlacedShot[]): PlacedShot[][] {
  const runs: PlacedShot[][] = []
  let end = Number.NEGATIVE_INFINITY
  for (const shot of shots) {
    if (fromIso(shot.setupStart) > end + PAUSE_MS) runs.push([])
    runs.at(-1)?.push(shot)
    end = Math.max(end, fromIso(shot.end))
  }
  return runs
}

/** Filled where a moment is among them: that time is the meat's. */
function boxOf(run: readonly PlacedShot[], layout: Layout, frame: Frame): Box {
  const first = run[0] as PlacedShot
  const last = run.reduce((a, b) => (fromIso(b.end) > fromIso(a.end) ? b : a))
  const x1 = x(frame, first.setupStart)
  const x2 = Math.max(x1 + BOX.least, x(frame, last.end))
  const long = `${run.length} ${run.length === 1 ? 'shot' : 'shots'}`
  return {
    id: (run.find((shot) => shot.hold === 'hard') ?? first).id,
    number: textWidth(long, LETTERING.number) + 6 <= x2 - x1 ? long : '',
    name: run.some((shot) => shot.hold === 'hard') ? null : '',
    live: run.some((shot) => isCalledLive(shot, layout)),
    x1,
    x2,
  }
}
