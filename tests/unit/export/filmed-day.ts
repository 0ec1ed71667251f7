import { foldLog } from '../../../lib/log/fold'
import type { Line } from '../../../lib/log/log'
import type { Shoot } from '../../../lib/plan/shoot'
import { line, logOf, mark, reading } from '../log/lines'
import { lambWith, read } from '../plan/shoots'

/** A short day of the lamb with two cameras. Minutes count from 13:00 in Dublin, which is 12:00 UTC. */
export const take = (minutes: number, shot: string, rest: object, camera = 'A') =>
  line(minutes, 'take', { shot, slate: shot.slice(0, 4), take: 1, camera, ...rest })
const rolled = (from: number, to: number, shot: string, verdict = 'good', rest: object = {}, camera = 'A') => [
  take(from, shot, { roll: 'start', ...rest }, camera),
  take(to, shot, { roll: 'end', verdict, ...rest }, camera),
]

export const CLOCKS = [
  line(-20, 'camera-clock', { camera: 'A', timecode: '12:40:00:00' }),
  line(-20, 'camera-clock', { camera: 'B', timecode: '12:40:12:00' }),
]
export const FILMED: readonly Line[] = [
  ...rolled(-10, -4, 'opening'),
  ...rolled(-3, -2, 'seasoning', 'no-good'),
  ...rolled(-2, -0.5, 'seasoning', 'good', { take: 2 }),
  ...rolled(-1, 2, 'meat-on', 'good', {}, 'B'),
  mark(0, 'meat-on'),
  mark(60, 'turn'),
  mark(60.2, 'probe-in'),
  ...rolled(59, 62, 'probe-close'),
  ...Array.from({ length: 61 }, (_, i) => reading(61 + i, 20 + i / 2)),
  ...Array.from({ length: 61 }, (_, i) => reading(61 + i, 150, {}, 'cooker')),
  mark(121, 'pull'),
  mark(130, 'off-heat'),
  line(131, 'shot-state', { shot: 'sear', state: 'missed', why: 'Card full.' }),
  mark(150, 'first-slice'),
  ...rolled(149, 154, 'first-cut'),
  take(155, 'first-cut', { note: 'Lovely, <steam> & sound' }),
]
export const filmed = (...more: readonly Line[]) => foldLog(logOf(...FILMED, ...more))
export const withClips = (...clips: readonly object[]): Shoot =>
  read(lambWith(clips.length > 0 ? { '/clips': clips } : {}))
export const clip = (id: string, start: string, rest: object = {}) => ({
  id,
  camera: 'A',
  start,
  rate: '25',
  length: '5 min',
  ...rest,
})
