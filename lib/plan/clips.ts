import type { z } from 'zod'
import type { Problem } from '../refusals'
import type { Seconds } from '../units'
import { list, quantity, record, text, word } from './fields'
import { listed, nearest, quoted } from './nearest'
import { FRAME_RATES, readTimecode } from './timecode'

/** A file that a camera made, and where it stands in the finished video. */

/** No camera records for longer in one file. [estimate] */
const LONGEST_S = 12 * 3600
const length = quantity<Seconds>('duration', {
  min: 0.04,
  max: LONGEST_S,
  sentence: (written) => `${written} is no length of a clip. Write a time up to 12 h, such as "4 min 12 s".`,
  examples: ['4 min 12 s', '90 s'],
})
const place = quantity<Seconds>('duration', {
  min: 0,
  max: LONGEST_S,
  sentence: (written) => `${written} is no place in a video. Write the time from its beginning, such as "2 min 30 s".`,
  examples: ['2 min 30 s', '0 s'],
})

const CLIP = record('a clip', {
  id: text('the name of a clip', 60, 1),
  camera: text('a camera', 20, 1),
  /** Whether its rate has this label `checkClips` says. */
  start: text('the timecode of the first frame', 20),
  rate: word('a frame rate', FRAME_RATES),
  length: length.optional(),
  /** Time from the beginning of the finished video to the clip's first frame. */
  in: place.optional(),
})
export const CLIPS = list('clips', CLIP, 200)
export type Clip = z.output<typeof CLIP>

interface WithClips {
  readonly clips?: readonly Clip[]
  readonly cameras?: readonly { readonly id: string }[]
}
/** What clips that are well written can get wrong between their fields. */
export function checkClips({ clips = [], cameras = [] }: WithClips): Problem[] {
  const known = cameras.map((camera) => camera.id)
  return clips.flatMap((clip, i): Problem[] => {
    const at = `/clips/${i}`
    const read = readTimecode(clip.start, clip.rate)
    return [
      ...(read.ok ? [] : [{ pointer: `${at}/start`, sentence: read.sentence }]),
      ...(known.length === 0 || known.includes(clip.camera)
        ? []
        : [{ pointer: `${at}/camera`, sentence: unknownCamera(clip.camera, known) }]),
      ...(clips.findIndex((one) => one.id === clip.id) === i
        ? []
        : [
            {
              pointer: `${at}/id`,
              sentence: `Another clip is called "${clip.id}" already. Give this one its own name.`,
            },
          ]),
    ]
  })
}
function unknownCamera(written: string, known: readonly string[]): string {
  const meant = nearest(written, known)
  return `The shoot has no camera ${quoted(written)}. ${meant ? `Did you mean "${meant}"?` : `Write ${listed(known)}.`}`
}
