import { describe, expect, it } from 'vitest'
import { chaptersOf } from '../../../lib/export/chapters'
import { clipsInDay, placesAt } from '../../../lib/export/clip-times'
import { webVtt } from '../../../lib/export/webvtt'
import { foldLog } from '../../../lib/log/fold'
import { EMPTY_LOG } from '../../../lib/log/log'
import { seconds } from '../../../lib/units'
import { at, line } from '../log/lines'
import { faults, lambWith } from '../plan/shoots'
import { CLOCKS, clip, filmed, withClips } from './filmed-day'
import { cuesOf } from './strict-webvtt'

const minutesOf = (ms: number) => Number(((ms - at(0)) / 60_000).toFixed(4))

describe('clips on the day’s clock', () => {
  it('are put right by what the log read off the camera’s clock', () => {
    const shoot = withClips(clip('a1', '13:00:00:00'), clip('b1', '13:00:12:00', { camera: 'B' }))
    expect(clipsInDay(shoot, filmed(...CLOCKS)).map(({ from }) => minutesOf(from))).toEqual([0, 0])
    const [a, b] = placesAt(clipsInDay(shoot, filmed(...CLOCKS)), at(1))
    expect([a?.timecode, b?.timecode, b?.into]).toEqual(['13:01:00:00', '13:01:12:00', 60])
  })
  it('of a camera that nobody read are taken for the time of day', () => {
    expect(clipsInDay(withClips(clip('a1', '12:50:00:00')), filmed()).map(({ from }) => minutesOf(from))).toEqual([-10])
  })
  it('follow a clock that drifts along a line, and one that was set by the nearest reading', () => {
    const drifts = [
      line(0, 'camera-clock', { camera: 'A', timecode: '13:00:00:00' }),
      line(100, 'camera-clock', { camera: 'A', timecode: '14:40:04:00' }),
    ]
    const [drifted] = clipsInDay(withClips(clip('a1', '13:50:02:00')), filmed(...drifts))
    expect(minutesOf(drifted?.from ?? 0)).toBeCloseTo(50, 3)
    const set = [
      line(0, 'camera-clock', { camera: 'A', timecode: '13:00:00:00' }),
      line(100, 'camera-clock', { camera: 'A', timecode: '02:00:00:00' }),
    ]
    const [old, anew] = clipsInDay(withClips(clip('a1', '13:10:00:00'), clip('a2', '02:01:00:00')), filmed(...set))
    expect([minutesOf(old?.from ?? 0), minutesOf(anew?.from ?? 0)]).toEqual([10, 101])
  })
  it('at 29.97 non-drop run slow against the clock: an hour on the label is 3603.6 s', () => {
    const read = line(0, 'camera-clock', { camera: 'A', timecode: '13:00:00:00' })
    const [one] = clipsInDay(withClips(clip('a1', '14:00:00:00', { rate: '29.97' })), filmed(read))
    expect((one?.from ?? 0) - at(0)).toBeCloseTo(3_603_600, 0)
  })
  it('cross midnight: of the days it could be, the one the log tells of', () => {
    const day = filmed(line(-20, 'camera-clock', { camera: 'A', timecode: '23:50:00:00' }))
    expect(clipsInDay(withClips(clip('a1', '00:10:00:00')), day).map(({ from }) => minutesOf(from))).toEqual([0])
  })
  it('are refused at their field with one sentence', () => {
    const bad = [
      clip('a1', '13:00:00:30'),
      clip('a1', '00:01:00;01', { rate: '29.97 drop', camera: 'C' }),
      clip('x', '0', { rate: '26', length: '5' }),
    ]
    expect(faults(lambWith({ '/clips': bad.slice(0, 2) }))).toEqual([
      expect.stringMatching(/^\/clips\/0\/start: .*run from 00 to 24/),
      expect.stringMatching(/^\/clips\/1\/start: Drop-frame leaves/),
      expect.stringMatching(/^\/clips\/1\/camera: The shoot has no camera "C"/),
      expect.stringMatching(/^\/clips\/1\/id: Another clip/),
    ])
    expect(faults(lambWith({ '/clips': bad.slice(2) }))).toEqual([
      expect.stringMatching(/^\/clips\/0\/rate: "26" is not a frame rate\. Did you mean/),
      expect.stringMatching(/^\/clips\/0\/length: 5 what\?/),
    ])
  })
})

describe('chapters', () => {
  it('count from the first slate while no clip has its place in the video', () => {
    const chapters = chaptersOf(withClips(), filmed())
    expect(chapters.map(({ startS, title }) => [startS, title])).toEqual([
      [0, 'Opening, to camera at the gate'],
      [480, 'Seasoning by hand'],
      [540, 'Meat on'],
      [69 * 60, 'Probe in'],
      [70 * 60, 'Turn'],
      [131 * 60, 'Pull temperature'],
      [140 * 60, 'Off the heat'],
      [159 * 60, 'First slice'],
    ])
    expect(chapters.at(-1)?.endS).toBe(164 * 60)
  })
  it('stand in the video where the clips do, and what is in no clip is left out', () => {
    const shoot = withClips(
      clip('slice', '14:28:30:00', { in: '0 s', length: '2 min' }),
      clip('slice-2', '15:29:00:00', { in: '20 s' }),
      clip('meat', '12:59:12:00', { camera: 'B', in: '1 min 20 s' }),
    )
    const chapters = chaptersOf(shoot, filmed(...CLOCKS))
    expect(chapters.map(({ startS, endS, title }) => [startS, endS, title])).toEqual([
      [0, 20, 'Leg of lamb at the walled garden'],
      [20, 80, 'First slice'],
      [80, 380, 'Meat on'],
    ])
  })
  it('of a day without a log there are none', () => {
    expect(chaptersOf(withClips(clip('a1', '13:00:00:00', { in: '0 s' })), foldLog(EMPTY_LOG))).toEqual([])
  })
})

describe('WebVTT', () => {
  it('passes a strict parser, whatever a title holds', () => {
    const titles = ['Salt & "fire"', '<i>not a tag</i>', 'a --> b', 'two\n\nlines', 'WEBVTT', 'NOTE this', 'ends &']
    const file = webVtt(
      titles.map((text, i) => ({ startS: seconds(i * 3599.9996), endS: seconds(i * 3600 + 10), text })),
      ['Invented --> readings'],
    )
    expect(cuesOf(file).map(({ text }) => text)).toEqual(titles.map((text) => text.replace('\n\n', '\n')))
    expect(cuesOf(file)[1]?.startTime).toBe(3600)
  })
  it('of the chapters of a day passes too', () => {
    const chapters = chaptersOf(withClips(), filmed())
    expect(
      cuesOf(
        webVtt(
          chapters.map((one) => ({ ...one, text: one.title })),
          [],
        ),
        'chapters',
      ),
    ).toHaveLength(8)
  })
})
