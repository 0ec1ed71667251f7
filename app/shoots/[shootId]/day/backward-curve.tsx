'use client'
import { setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import {
  chanceCurve,
  curveInFigures,
  dayIsLaidOut,
  howEarly,
  howEarlyToBeSliced,
  isChosen,
  layOut,
  meatOn,
  mustRestHead,
  plannedWords,
  sliced,
} from '../../../words/day'
import type { CurveMarkView, CurveView } from './curve-view'

interface CurveProps {
  readonly curve: CurveView
  readonly document: ShootDocument
  readonly act: (words: string, next: ShootDocument) => void
}
const W = 480
const H = 170
const LEFT = 44
const RIGHT = 12
const TOP = 14
const FOOT = 26
const x = (along: number) => LEFT + along * (W - LEFT - RIGHT)
const y = (chance: number) => TOP + (1 - chance) * (H - TOP - FOOT)

/** How early the meat goes on against the chance of the wished slice, and the choice between chances. */
export function BackwardCurve({ curve, document, act }: CurveProps) {
  const chosen = valueAt(document, '/day/slice/chance')
  /** What no meat-on reaches is said once. */
  const told = curve.marks.filter((mark, i, all) => all.findIndex(({ sentence }) => sentence === mark.sentence) === i)
  const choose = (mark: CurveMarkView) =>
    act(dayIsLaidOut(mark.share), setAt(document, '/day/slice/chance', mark.share))
  return (
    <section aria-label={howEarly} className="no-print mt-8">
      <h2>{howEarlyToBeSliced(curve.wanted)}</h2>
      <div className="cols-curve">
        <figure className="m-0">
          <Picture curve={curve} />
        </figure>
        <ul className="marks">
          {told.map((mark) => (
            <li key={mark.share}>
              <span>{mark.sentence}</span>
              {mark.clock && (
                <button type="button" className="btn" disabled={chosen === mark.share} onClick={() => choose(mark)}>
                  {chosen === mark.share ? isChosen(mark.share) : layOut(mark.share)}
                </button>
              )}
            </li>
          ))}
        </ul>
      </div>
      <details>
        <summary>{curveInFigures}</summary>
        <table className="max-w-md">
          <thead>
            <tr>
              <th scope="col">{meatOn}</th>
              <th scope="col">{sliced(curve.wanted)}</th>
              <th scope="col">{mustRestHead}</th>
            </tr>
          </thead>
          <tbody>
            {curve.rows.map(([clock, chance, waits]) => (
              <tr key={clock}>
                <td className="time">{clock}</td>
                <td>{chance}</td>
                <td>{waits}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  )
}

function Picture({ curve }: { curve: CurveView }) {
  const line = curve.points.map(
    ([along, chance], i) => `${i === 0 ? 'M' : 'L'}${x(along).toFixed(1)} ${y(chance).toFixed(1)}`,
  )
  const name = chanceCurve(curve.wanted)
  return (
    <svg className="block h-auto w-full" viewBox={`0 0 ${W} ${H}`} role="img" aria-label={name}>
      <title>{name}</title>
      {[0, 0.5, 0.8, 0.95].map((share) => (
        <g key={share}>
          <path d={`M${LEFT} ${y(share)}H${W - RIGHT}`} stroke="var(--rule)" strokeWidth={0.75} />
          <text x={LEFT - 6} y={y(share) + (share === 0.95 ? 1 : 6)} textAnchor="end" className="tick">
            {share === 0 ? '0' : `${Math.round(share * 100)} %`}
          </text>
        </g>
      ))}
      {curve.hours.map(({ along, words }) => (
        <text key={words} x={x(along)} y={H - 6} textAnchor="middle" className="tick">
          {words}
        </text>
      ))}
      <path d={line.join('')} fill="none" stroke="var(--ink)" strokeWidth={1.75} strokeLinejoin="round" />
      {curve.planned && (
        <>
          <path d={`M${x(curve.planned.along)} ${TOP}V${y(0)}`} stroke="var(--ember)" strokeWidth={1.25} />
          <text
            x={x(curve.planned.along) + (curve.planned.along > 0.6 ? -6 : 6)}
            y={y(0) - 8}
            textAnchor={curve.planned.along > 0.6 ? 'end' : 'start'}
            className="tick strong"
          >
            {plannedWords(curve.planned.clock, curve.planned.chance)}
          </text>
        </>
      )}
      {curve.marks.map(
        ({ along, chance, share }) =>
          along !== null && (
            <circle
              key={share}
              cx={x(along)}
              cy={y(chance)}
              r={4}
              fill="var(--paper)"
              stroke="var(--ink)"
              strokeWidth={2}
            />
          ),
      )}
    </svg>
  )
}
