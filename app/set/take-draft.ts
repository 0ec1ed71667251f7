import type { Take } from '@/lib/log/day-state'
import type { BoardFacts } from '@/lib/session/board-facts'
import type { Session } from '@/lib/session/session'
import type { EntryDraft } from './set-feed'

/** The take that this camera rolls on this shot, if it does. */
export const rollingOn = ({ told }: Session, shot: string, camera: string): Take | null =>
  told.takes.find((take) => take.rolling && take.shot === shot && take.camera === camera) ?? null

/** Takes are counted per shot and camera. */
export const nextTake = ({ told }: Session, shot: string | null, camera: string): number =>
  1 + Math.max(0, ...told.takes.filter((one) => one.shot === shot && one.camera === camera).map(({ take }) => take))

/** The slate carries the shot's number, unless somebody wrote another. */
export const slateOf = (facts: BoardFacts, shot: string | null): string =>
  shot === null ? '' : String(facts.shots[shot]?.number ?? '')

interface TakeMore {
  readonly slate?: string | null
  readonly roll?: 'start' | 'end'
  readonly verdict?: 'good' | 'no-good' | 'hold'
  readonly timecode?: string
  readonly note?: string
}
/** A take entry; shot, slate, number and camera together name the take. */
export function takeDraft(
  facts: BoardFacts,
  shot: string | null,
  take: number,
  camera: string,
  more: TakeMore,
): EntryDraft {
  const { slate = slateOf(facts, shot), roll, verdict, timecode, note } = more
  return {
    kind: 'take',
    take,
    camera,
    ...(shot && { shot }),
    ...(slate && { slate }),
    ...(roll && { roll }),
    ...(verdict && { verdict }),
    ...(timecode && { timecode }),
    ...(note && { note }),
  }
}
