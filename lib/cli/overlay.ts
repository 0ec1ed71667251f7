import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { parseArgs } from 'node:util'
import { clipsInDay } from '../export/clip-times'
import { cookShown, filmFacts } from '../export/film-facts'
import { type OverlayStyle, readSize } from '../export/overlay'
import { framesOf, overlayFault, overlayRuns } from '../export/overlay-frames'
import type { DayState } from '../log/day-state'
import type { Shoot } from '../plan/shoot'
import { rasteriser } from '../print/overlay-png'
import { frameName } from '../print/overlay-zip'
import { MADE_UP_NOTE } from '../session/rehearsal'
import { asCommand } from './as-command'
import { printJson } from './options'
import { readShootFile, tell } from './problems'
import { dayOfLog } from './read-log'

const USAGE =
  'Write: npm run -s overlay -- FILE --log NDJSON --clip ID --out DIR [--size 1920x1080] [--units metric|us].'

interface Options {
  readonly file: string
  readonly log: string
  readonly clip: string
  readonly out: string
  readonly size: { readonly width: number; readonly height: number }
  readonly units: 'metric' | 'us'
}

function readOptions(args: string[]): Options | null {
  const text = { type: 'string' } as const
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: { log: text, clip: text, out: text, size: text, units: text },
    })
    const { log, clip, out, units = 'metric' } = values
    const size = readSize(values.size)
    const [file] = positionals
    if (positionals.length !== 1 || !file || !log || !clip || !out || !size) return null
    return units === 'metric' || units === 'us' ? { file, log, clip, out, size, units } : null
  } catch {
    return null
  }
}

async function writeFrames(shoot: Shoot, day: DayState, options: Options): Promise<void> {
  const clips = clipsInDay(shoot, day)
  const clip = clips.find((one) => one.clip.id === options.clip)
  if (!clip)
    return tell(
      noClip(
        options.clip,
        clips.map((one) => one.clip.id),
      ),
    )
  const cook = cookShown(shoot, day, clip.from, clip.clip.camera)
  const facts = cook === null ? null : filmFacts(shoot, day, cook)
  const fault = overlayFault(clip, facts)
  if (fault !== null || !facts) return tell(fault ?? '')
  const invented = day.notes.some(({ entry }) => entry.text === MADE_UP_NOTE)
  const style: OverlayStyle = { ...options.size, units: options.units, invented }
  const draw = await rasteriser()
  mkdirSync(options.out, { recursive: true })
  let frame = 0
  let pictures = 0
  for (const { svg, count } of overlayRuns(facts, clip, style)) {
    const png = draw(svg)
    pictures++
    for (let i = 0; i < count; i++) writeFileSync(path.join(options.out, frameName(clip.clip.id, frame++)), png)
  }
  printJson({
    clip: clip.clip.id,
    rate: clip.clip.rate,
    start: clip.clip.start,
    frames: framesOf(clip),
    pictures,
    ...options.size,
    invented,
  })
}
const noClip = (id: string, known: readonly string[]) =>
  known.length === 0
    ? `The shoot has no clips, or its log tells of nothing. Write "clips": [{ "id": "${id}", "camera", "start", "rate", "length" }] into the shoot file.`
    : `The shoot has no clip "${id}". It has ${known.join(', ')}.`

/** Writes the temperature overlay of a clip as a PNG for each frame. */
export async function overlayCommand(args: string[]): Promise<void> {
  const options = readOptions(args)
  if (!options) return tell(USAGE)
  const shoot = readShootFile(options.file)
  const day = shoot && dayOfLog(shoot, options.log)
  if (!shoot || !day) return
  try {
    await writeFrames(shoot, day, options)
  } catch (fault) {
    if (!(fault instanceof Error && 'code' in fault)) throw fault
    tell(`${options.out} cannot be written. Name a folder that may be written.`)
  }
}

await asCommand(import.meta.url, overlayCommand)
