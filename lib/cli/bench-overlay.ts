import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { ClipInDay } from '../export/clip-times'
import type { FilmFacts } from '../export/film-facts'
import { overlayRuns } from '../export/overlay-frames'
import { frames } from '../plan/timecode'
import { rasteriser } from '../print/overlay-png'
import { zipOfFrames } from '../print/overlay-zip'
import { celsius, instant, later, minutes } from '../units'

const CLIP_MIN = 2
/** A cook of four hours that warms through: its picture changes each minute, and with each degree. */
const MEAT_ON = instant(Date.UTC(2027, 4, 15, 14))
const FACTS: FilmFacts = {
  cook: 'hero',
  meatOn: MEAT_ON,
  went: 'went on',
  marks: {},
  probeC: Array.from({ length: 241 }, (_, minute) => celsius(4 + 56 * (minute / 240) ** 1.3)),
}

/** How many times real time the overlay of a full-size clip is drawn and written to disk as a zip, the set-up left out. */
export async function overlayTimesRealTime(): Promise<number> {
  const from = later(MEAT_ON, minutes(120.5))
  const clip: ClipInDay = {
    clip: { id: 'bench', camera: 'A', start: '16:00:30:00', rate: '25' },
    from,
    to: later(from, minutes(CLIP_MIN)),
    start: frames(0),
  }
  const draw = await rasteriser()
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-overlay-'))
  const file = openSync(path.join(folder, 'overlay.zip'), 'w')
  try {
    const began = performance.now()
    const style = { width: 1920, height: 1080, units: 'metric', invented: true } as const
    const runs = overlayRuns(FACTS, clip, style)
    const drawEach = async (svgs: readonly string[]) => svgs.map(draw)
    for await (const piece of zipOfFrames(drawEach, { name: 'bench', runs, about: 'Bench.', at: from }))
      writeSync(file, piece)
    return (CLIP_MIN * 60_000) / (performance.now() - began)
  } finally {
    closeSync(file)
    rmSync(folder, { recursive: true })
  }
}
