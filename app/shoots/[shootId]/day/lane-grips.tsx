'use client'
import type { Drawing, DrawingAxis, ShotBox } from '@/lib/export/drawing'
import { asRead } from '@/lib/plan/as-read'
import { shotsOf } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { useReadersWay } from '../../../ui/reader'
import { onHeatLine, spokenTimes, untitledShot } from '../../../words/day'
import { clockWords } from './clock-words'
import type { DayView, ShotRow } from './day-view'
import { type ShotMove, shotMove } from './shot-move'
import { useShift } from './use-shift'

/** Where the boxes under the heat line stand, px of a picture of this size. */
interface LanePicture {
  readonly size: { readonly width: number; readonly height: number }
  readonly axis: DrawingAxis
  readonly boxes: readonly ShotBox[]
}
interface LaneGripsProps {
  readonly drawing: Drawing
  readonly document: ShootDocument
  /** The day as the picture draws it, and as it is tried out. */
  readonly drawn: DayView
  readonly view: DayView
  readonly act: (words: string, next: ShootDocument) => void
  readonly attempt: (next: ShootDocument | null) => void
}

/** The boxes under the heat line, to be drawn along it as on the shot's own line in the table. */
export function LaneGrips({ drawing, document, drawn, view, act, attempt }: LaneGripsProps) {
  const { width, height, axis, boxes = [] } = drawing
  if (!axis || axis.standing || boxes.length === 0) return null
  const size = { width, height }
  const picture = { size, axis, boxes }
  const along = { left: `${(axis.start / size.width) * 100}%`, right: `${(1 - axis.end / size.width) * 100}%` }
  return (
    <div className="lane-grips" style={{ maxWidth: size.width * 1.3, aspectRatio: `${size.width} / ${size.height}` }}>
      <div className="absolute inset-y-0" style={along}>
        {boxes.map((box) => {
          const row = view.rows.find(({ id }) => id === box.id)
          const was = drawn.rows.find(({ id }) => id === box.id)
          const shot = shotsOf(document).find(({ id }) => id === box.id)
          if (!row?.place || !was?.place || !shot) return null
          const title = `${row.number} ${typeof shot.title === 'string' && shot.title ? shot.title : untitledShot}`
          const move = shotMove(document, row, title, view.slice)
          if (move.hold === 'fixed') return null
          return (
            <LaneGrip
              key={box.id}
              box={box}
              picture={picture}
              start={row.place.start}
              drawnStart={was.place.start}
              row={row}
              title={title}
              zone={typeof document.zone === 'string' ? document.zone : 'UTC'}
              move={move}
              onTry={(at) => attempt(at === null ? null : move.movedTo(at))}
              onSet={(at) => act(move.told(at), move.movedTo(at))}
            />
          )
        })}
      </div>
    </div>
  )
}

interface LaneGripProps {
  readonly box: ShotBox
  readonly picture: LanePicture
  readonly start: number
  readonly drawnStart: number
  readonly row: ShotRow
  readonly title: string
  readonly zone: string
  readonly move: ShotMove
  readonly onTry: (at: number | null) => void
  readonly onSet: (at: number) => void
}

function LaneGrip({ box, picture, start, drawnStart, row, title, zone, move, onTry, onSet }: LaneGripProps) {
  const { axis, size } = picture
  const { at, handle } = useShift({ from: start, least: axis.from, most: axis.to, onTry, onSet })
  const stands = at ?? start
  const span = axis.end - axis.start
  const share = (px: number) => `${(px / span) * 100}%`
  const down = (px: number) => `${(px / size.height) * 100}%`
  const shiftPx = ((stands - drawnStart) / (axis.to - axis.from)) * span
  const place = { top: down(box.top), height: down(box.height), width: share(box.x2 - box.x1) }
  const way = useReadersWay()
  const clock = asRead(clockWords(stands, zone), way)
  // The others that make way are told in the table; here they would only cover the picture.
  const ghost = at !== null || (move.pinned && stands !== drawnStart)
  return (
    <>
      {ghost && (
        <span
          className="lane-ghost"
          aria-hidden="true"
          style={{ ...place, left: share(box.x1 - axis.start + shiftPx) }}
        >
          <b>{clock}</b>
        </span>
      )}
      <span
        role="slider"
        tabIndex={0}
        aria-label={onHeatLine(title)}
        aria-describedby={`how-${move.hold}`}
        aria-valuemin={0}
        aria-valuemax={Math.round((axis.to - axis.from) / 60_000)}
        aria-valuenow={Math.round((stands - axis.from) / 60_000)}
        aria-valuetext={spokenTimes(
          clock,
          asRead(clockWords(stands + (row.place ? row.place.end - row.place.start : 0), zone), way),
          move.pinned ? ', pinned' : '',
          at === null ? '' : ', tried out',
        )}
        className="lane-grip"
        style={{ ...place, left: share(box.x1 - axis.start) }}
        {...handle}
      />
    </>
  )
}
