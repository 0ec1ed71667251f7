'use client'
import { shotsOf, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { WithTerms } from '../../../ui/with-terms'
import { less, lessWords, more, moreWords, ofWords, untitledShot } from '../../../words/day'
import { type DocumentField, fieldAt } from '../../document-fields'
import { Cell } from './cell'
import type { DayAxis, ShotRow as Row } from './day-view'
import { COLUMNS, shotCells } from './shot-cells'
import { shotMove } from './shot-move'
import { ShotTrack } from './shot-track'

export interface RowProps {
  readonly document: ShootDocument
  readonly index: number
  readonly row: Row | undefined
  readonly axis: DayAxis | null
  /** The likely first slice, ms; what a wish is counted from. */
  readonly slice: number | null
  readonly problems: readonly Problem[]
  readonly open: boolean
  readonly onOpen: () => void
  readonly change: (next: ShootDocument) => void
  readonly act: (words: string, next: ShootDocument) => void
  readonly attempt: (next: ShootDocument | null) => void
}

/** One shot: written in its cells, read on its track. */
export function ShotRow(props: RowProps) {
  const { document, index, row, axis, problems, open, change } = props
  const shot = shotsOf(document)[index]
  const cells = shotCells(document, index)
  const all = [cells.title, ...COLUMNS.flatMap((column) => cells[column] ?? [])]
  const faultOf = (field: DocumentField) =>
    problems.find((problem) => fieldAt(all, problem.pointer) === field)?.sentence
  const title = `${row?.number ?? index + 1} ${typeof shot?.title === 'string' && shot.title ? shot.title : untitledShot}`
  return (
    <tr className={`shot ${row?.kind ?? 'free'}${open ? ' open' : ''}`} data-shot={shot?.id}>
      <td className="time no">{row?.number ?? index + 1}</td>
      <td className="name">
        <Cell field={cells.title} document={document} fault={faultOf(cells.title)} onChange={change} />
        {row && (
          <p className="small falls">
            <WithTerms text={fallsWords(row)} of={{ tentative: 'tentative' }} />
          </p>
        )}
      </td>
      <td className="on-axis">{row && axis && <Track {...props} row={row} axis={axis} title={title} />}</td>
      {COLUMNS.map((column) => {
        const field = cells[column]
        const fault = field ? faultOf(field) : undefined
        return (
          <td key={column} className={`in ${column.replace(' ', '-')}${fault ? ' wrong' : ''}`}>
            {field ? (
              <Cell
                field={field}
                document={document}
                fault={fault}
                list={column === 'place' ? 'places' : undefined}
                onChange={change}
              />
            ) : (
              <span className="cell-none">{aroundWords(document, index)}</span>
            )}
          </td>
        )
      })}
      <td className="do">
        <button
          type="button"
          className="textlink more"
          aria-expanded={open}
          aria-label={ofWords(open ? lessWords : moreWords, title)}
          onClick={props.onOpen}
        >
          {open ? less : more}
        </button>
      </td>
    </tr>
  )
}

/** "A, presenter · stand by 16:13 · comes 17:28 to 18:38". */
function fallsWords(row: Row): string {
  if (row.kind === 'drop') return 'dropped'
  const standby = row.standby.startsWith('follows') ? row.standby : row.standby && `stand by ${row.standby}`
  const who = [row.camera, row.people].filter(Boolean).join(', ')
  return [
    who,
    standby,
    row.window && `${row.window.startsWith('may') ? '' : 'comes '}${row.window}`,
    row.tentative && 'tentative',
  ]
    .filter(Boolean)
    .join(' · ')
}
/** What a shot at a moment rolls before and after it. */
function aroundWords(document: ShootDocument, index: number): string {
  const at = valueAt(document, `/shots/${index}/at`) as { before?: string; after?: string } | undefined
  if (!at) return '–'
  const [before, after] = [at.before ?? '1 min', at.after ?? '2 min']
  return before.endsWith(' min') && after.endsWith(' min')
    ? `${before.slice(0, -4)} + ${after}`
    : `${before} + ${after}`
}

function Track({ row, axis, title, ...props }: RowProps & { row: Row; axis: DayAxis; title: string }) {
  const { document, slice } = props
  const move = shotMove(document, row, title, slice)
  return (
    <ShotTrack
      row={row}
      axis={axis}
      zone={typeof document.zone === 'string' ? document.zone : 'UTC'}
      title={title}
      pinned={move.pinned}
      hold={move.hold}
      onTry={(at) => props.attempt(at === null ? null : move.movedTo(at))}
      onSet={(at) => props.act(move.told(at), move.movedTo(at))}
    />
  )
}
