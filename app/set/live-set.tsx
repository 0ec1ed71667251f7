'use client'
import { type ReactNode, useSyncExternalStore } from 'react'
import type { BoardFacts } from '@/lib/session/board-facts'
import type { UnitSystem } from '@/lib/units'
import { openingBoard, openingDesk } from '../words/set'
import { useSetFeed } from './feed/use-set-feed'
import { Opening, OpeningLine } from './opening'
import { PhotosHere } from './photos/photos-here'
import { SetContext } from './set-context'
import type { SetOpening } from './set-feed'

export interface LiveSetProps {
  readonly shootId: string
  readonly opening: SetOpening
  readonly facts: BoardFacts
  readonly units: UnitSystem
}

const never = () => () => {}
/** False on the server and while the page is taken over: what ticks is drawn in the browser only. */
const useIsHere = () =>
  useSyncExternalStore(
    never,
    () => true,
    () => false,
  )

interface Screen extends LiveSetProps {
  /** It stands under a page's head, and does not fill the page. */
  readonly inPage?: boolean
  readonly children: ReactNode
}
/** A screen of the set on the live feed. */
export function LiveSet({ shootId, opening, facts, units, inPage = false, children }: Screen) {
  const isHere = useIsHere()
  const feed = useSetFeed(shootId, opening)
  if (!isHere) return inPage ? <OpeningLine what={openingDesk} /> : <Opening title={facts.title} what={openingBoard} />
  return (
    <SetContext feed={feed} facts={facts} units={units}>
      <PhotosHere shootId={shootId}>{children}</PhotosHere>
    </SetContext>
  )
}
