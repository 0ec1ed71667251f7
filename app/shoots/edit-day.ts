import 'server-only'
import { BorderError } from '@/lib/data/border-error'
import { type ClipInDay, clipsInDay } from '@/lib/export/clip-times'
import { clipsOfTakes } from '@/lib/export/clips-of-takes'
import { cookShown, type FilmFacts, filmFacts } from '@/lib/export/film-facts'
import { type OverlayStyle, readSize } from '@/lib/export/overlay'
import type { DayState } from '@/lib/log/day-state'
import { parseShoot } from '@/lib/plan/parse'
import type { Shoot } from '@/lib/plan/shoot'
import { readQuantity } from '@/lib/units'
import { chosenUnits } from '../units'
import { clipsFirst, knownAre } from '../words/edit'
import { type OpenShoot, openShoot } from '../workbench'
import { dayLogOf, INVENTED, whichDay } from './day-log'

export interface EditDay {
  readonly open: OpenShoot
  /** With clips made from the takes where a rehearsed day has none of its own. */
  readonly shoot: Shoot
  readonly day: DayState
  readonly invented: boolean
  /** What each file says first, where its day was never filmed. */
  readonly notes: readonly string[]
}

/** The day that the editor's page and files are made from. */
export async function openEdit(
  shootId: string,
  asked: string | readonly string[] | null | undefined,
): Promise<EditDay> {
  const open = await openShoot(shootId)
  const which = whichDay(asked)
  const { day, invented } = await dayLogOf(shootId, open.shoot, which)
  const shoot = invented && !open.shoot.clips?.length ? withMadeUpClips(open, day) : open.shoot
  return { open, shoot, day, invented, notes: invented ? [INVENTED] : [] }
}

/** One after another, as a first cut would have them. */
function withMadeUpClips({ document, shoot }: OpenShoot, day: DayState): Shoot {
  let at = 0
  const clips = clipsOfTakes(day, '25').map((clip) => {
    const placed = { ...clip, in: `${at} s` }
    const length = readQuantity(clip.length, 'duration')
    at += length.ok ? length.si : 0
    return placed
  })
  const parsed = parseShoot({ ...document, clips })
  return parsed.ok ? parsed.value : shoot
}

export interface OverlayAsked {
  readonly clip: ClipInDay
  readonly facts: FilmFacts | null
  readonly style: OverlayStyle
}
/** The clip, the cook it shows and the picture's size, as the address says; refused in a sentence where one is not known. */
export async function overlayAsked({ shoot, day, invented }: EditDay, query: URLSearchParams): Promise<OverlayAsked> {
  const clips = clipsInDay(shoot, day)
  const clip = clips.find((one) => one.clip.id === query.get('clip'))
  if (!clip) throw refused('/clips', `There is no clip "${query.get('clip') ?? ''}" here. ${known(clips)}`)
  const size = readSize(query.get('size'))
  if (!size) throw refused('/size', 'This is no size of footage. Write width and height in pixels, "1920x1080".')
  const cook = cookShown(shoot, day, clip.from, clip.clip.camera)
  const facts = cook === null ? null : filmFacts(shoot, day, cook)
  return { clip, facts, style: { ...size, units: await chosenUnits(), invented } }
}
const known = (clips: readonly ClipInDay[]) =>
  clips.length > 0 ? knownAre(clips.map(({ clip }) => clip.id).join(', ')) : clipsFirst

export const refused = (pointer: string, sentence: string) =>
  new BorderError('invalid', { problems: [{ pointer, sentence }], sentence })
