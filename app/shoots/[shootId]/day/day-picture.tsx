'use client'
import type { ShootDocument } from '@/lib/plan/shoot'
import { HeatLineFigure } from '../../../ui/heat-line-figure'
import type { HeatPictures } from '../../../ui/heat-line-shapes'
import type { Act } from '../../use-actions'
import type { DayView } from './day-view'
import { LaneGrips } from './lane-grips'

interface PictureProps {
  readonly pictures: HeatPictures | null
  /** The day as the picture draws it, and as it is tried out. */
  readonly drawn: DayView | null
  readonly view: DayView | null
  readonly document: ShootDocument
  readonly act: Act
  readonly attempt: (next: ShootDocument | null) => void
  readonly warm: () => void
}
/** The heat line, with the boxes of the shots to be drawn along it. */
export function DayPicture({ pictures, drawn, view, document, act, attempt, warm }: PictureProps) {
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the engine is fetched once somebody is about to draw
    <div className="relative" onFocus={warm} onPointerEnter={warm}>
      {pictures && (
        <HeatLineFigure
          pictures={pictures}
          over={(drawing) =>
            drawn &&
            view && (
              <LaneGrips drawing={drawing} document={document} drawn={drawn} view={view} act={act} attempt={attempt} />
            )
          }
        />
      )}
    </div>
  )
}
