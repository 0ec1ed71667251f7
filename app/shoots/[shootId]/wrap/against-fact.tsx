import { type Instant, seconds } from '@/lib/units'
import { isSet, type MomentRow } from '@/lib/wrap/moments'
import type { Span } from '@/lib/wrap/told'
import { offBy } from '@/lib/wrap/words'
import { Sideways } from '../../../ui/sideways'
import { WithTerms } from '../../../ui/with-terms'
import {
  against,
  againstPlan,
  asItHappened,
  atWords,
  boardAt,
  figuresBehindPicture,
  forecastAgainstFact,
  happenedWords,
  itsWindow,
  minutesBeforeAndAfter,
  momentWords,
  notMarked,
  notSeen,
  planEarlyLikelyLate,
  takesWords,
  thePlan,
} from '../../../words/wrap'
import type { WrapModel } from '../../wrap-model'
import { axisFor, type FactAxis } from './fact-axis'

/** Forecast against fact: what happened is the axis, the windows lie about it. A table with the same figures stands behind. */
interface AgainstFactProps {
  readonly model: WrapModel
  readonly clock: (at: Instant) => string
  readonly cooks: number
}
export function AgainstFact({ model, clock, cooks }: AgainstFactProps) {
  const axis = axisFor(model.rows)
  const board = model.board && clock(model.board.at)
  return (
    <section aria-label={forecastAgainstFact}>
      <p className="legend small">
        <span>
          <svg className="key" width="34" height="14" aria-hidden="true">
            <rect className="morning" x="1" y="3" width="32" height="8" />
            <line className="mid" x1="17" x2="17" y1="0" y2="14" />
          </svg>
          {thePlan}
        </span>
        {board && (
          <span className="board">
            <svg className="key" width="34" height="14" aria-hidden="true">
              <rect className="board" x="1" y="4" width="32" height="6" />
              <rect className="board" x="16" y="1" width="2.5" height="12" />
            </svg>
            {boardAt(board)}
          </span>
        )}
        <span>
          <svg className="key" width="14" height="14" aria-hidden="true">
            <circle className="fact" cx="7" cy="7" r="4.5" />
          </svg>
          {asItHappened}
        </span>
      </p>
      <table className="facts">
        <thead>
          <tr>
            <th scope="col">{momentWords}</th>
            <th scope="col" className="text-right">
              {happenedWords}
            </th>
            <th scope="col" className="about">
              <Ticks axis={axis} />
            </th>
            <th scope="col" className="text-right">
              {board ? against(board) : againstPlan}
            </th>
            <th scope="col">{takesWords}</th>
          </tr>
        </thead>
        <tbody>
          {model.rows.map((row) => (
            <tr key={row.cook + row.moment}>
              <th scope="row">
                <WithTerms text={row.name} of={{ carryover: 'carryover' }} />
                {cooks > 1 && <span className="small"> {row.cook}</span>}
              </th>
              <td className="time text-right">
                {row.happened === null ? (row.moment === 'carryover-peak' ? notSeen : notMarked) : clock(row.happened)}
              </td>
              <td className="about">{row.happened !== null && <Track row={row} fact={row.happened} axis={axis} />}</td>
              <td className="off text-right">{offWords(row, board !== null)}</td>
              <td className="takes">{row.takes}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Figures rows={model.rows} clock={clock} board={board} cooks={cooks} />
    </section>
  )
}

const offWords = ({ offBoard, offMorning, morning }: MomentRow, hasBoard: boolean): string => {
  if (hasBoard) return offBoard === null ? '' : offBy(offBoard)
  return offMorning === null || isSet(morning) ? '' : offBy(offMorning)
}

/** "40 min before … as it happened … 40 min after". */
function Ticks({ axis }: { axis: FactAxis }) {
  return (
    <svg className="axis" width="100%" height="18" role="img" aria-label={minutesBeforeAndAfter}>
      {axis.ticks.map(({ at, words }) => (
        <text key={at} x={`${at}%`} y="13" textAnchor="middle">
          {words}
        </text>
      ))}
    </svg>
  )
}

function Track({ row, fact, axis }: { row: MomentRow; fact: Instant; axis: FactAxis }) {
  const { morning, board } = row
  return (
    <svg className="axis" width="100%" height="34" aria-hidden="true">
      <line className="fact" x1="50%" x2="50%" y1="0" y2="34" />
      <Bar span={morning} fact={fact} axis={axis} y={board ? 6 : 13} height={8} className="morning" />
      {morning.likely !== null && (
        <Mark at={axis.at(morning.likely, fact)} y={board ? 3 : 10} height={14} className="mid" />
      )}
      {board && <Bar span={board} fact={fact} axis={axis} y={21} height={6} className="board" />}
      {board?.likely != null && <Mark at={axis.at(board.likely, fact)} y={18} height={12} className="board" />}
      <circle className="fact" cx="50%" cy="17" r="4.5" />
    </svg>
  )
}
interface BarProps {
  readonly span: Span
  readonly fact: Instant
  readonly axis: FactAxis
  readonly y: number
  readonly height: number
  readonly className: string
}
function Bar({ span, fact, axis, y, height, className }: BarProps) {
  if (span.early === null || isSet(span)) return null
  const [from, to] = [axis.at(span.early, fact), span.late === null ? 100 : axis.at(span.late, fact)]
  return <rect className={className} x={`${from}%`} width={`${Math.max(0, to - from)}%`} y={y} height={height} />
}
const Mark = ({ at, y, height, className }: { at: number; y: number; height: number; className: string }) => (
  <line className={className} x1={`${at}%`} x2={`${at}%`} y1={y} y2={y + height} />
)

interface FiguresProps {
  readonly rows: readonly MomentRow[]
  readonly clock: (at: Instant) => string
  readonly board: string | null
  readonly cooks: number
}
function Figures({ rows, clock: clockOf, board, cooks }: FiguresProps) {
  const clock = (at: Instant | null) => (at === null ? '' : clockOf(at))
  const span = (one: Span | null) =>
    one === null || one.likely === null
      ? ''
      : isSet(one)
        ? clock(one.likely)
        : `${clock(one.early)} · ${clock(one.likely)} · ${one.late === null ? 'never' : clock(one.late)}`
  const fell = { inside: 'inside', before: 'before it', after: 'after it' } as const
  return (
    <details className="mt-3">
      <summary>{figuresBehindPicture}</summary>
      <Sideways of={figuresBehindPicture}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{momentWords}</th>
              <th scope="col">{planEarlyLikelyLate}</th>
              {board && <th scope="col">{atWords(board)}</th>}
              <th scope="col">{happenedWords}</th>
              <th scope="col">{againstPlan}</th>
              <th scope="col">{itsWindow}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.cook + row.moment}>
                <th scope="row">
                  {row.name}
                  {cooks > 1 && ` ${row.cook}`}
                </th>
                <td className="win">{span(row.morning)}</td>
                {board && <td className="win">{span(row.board)}</td>}
                <td className="time">{clock(row.happened)}</td>
                <td>{row.offMorning === null ? '' : offBy(seconds(row.offMorning))}</td>
                <td>{row.fell === null ? '' : fell[row.fell]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Sideways>
    </details>
  )
}
