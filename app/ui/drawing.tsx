import { memo } from 'react'
import type { Drawing, DrawingTable, Face, Mark, Role, TextMark } from '@/lib/export/drawing'
import { isShade, shadeColour } from '@/lib/export/tones'
import { sameInFigures } from '../words/shared'
import { Sideways } from './sideways'

/** Colours that do not follow day and dusk: the slice's are the meat's own, and the night is dark at any hour. */
const OWN_COLOURS: Partial<Record<Role, string>> = {
  seam: '#1D1814',
  crust: '#3B281B',
  bone: '#F7F1E2',
  marrow: '#D9C4A6',
  fat: '#F8F0DC',
  night: '#0B0908',
  star: '#FBF8F1',
}
const FACES: Record<Face, string> = { condensed: 'var(--cond)', sans: 'var(--sans)', serif: 'var(--serif)' }
export function paint(role: Role | undefined): string {
  if (!role) return 'none'
  return isShade(role) ? shadeColour(role) : (OWN_COLOURS[role] ?? `var(--${role})`)
}

/** A drawing as SVG; colours come from the page's own ground (day, dusk, grey). Hundreds of marks: drawn again only when it is another drawing. */
export const DrawingSvg = memo(function DrawingSvg({ drawing, grows = false }: { drawing: Drawing; grows?: boolean }) {
  return (
    <svg
      className={`block h-auto ${grows ? 'w-full print:max-w-none!' : 'max-w-full'}`}
      style={grows ? { maxWidth: drawing.width * 1.3 } : undefined}
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      width={drawing.width}
      role="img"
      aria-label={drawing.title}
    >
      <title>{drawing.title}</title>
      {drawing.marks.map((mark, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: marks are drawn in order and never reordered
        <MarkSvg key={i} mark={mark} />
      ))}
    </svg>
  )
})

function MarkSvg({ mark }: { mark: Mark }) {
  if (mark.kind === 'text') return <TextSvg mark={mark} />
  const stroke = mark.stroke && {
    stroke: paint(mark.stroke),
    strokeWidth: mark.width,
    strokeDasharray: mark.dash?.join(' '),
    strokeLinecap: mark.round ? ('round' as const) : undefined,
    strokeLinejoin: mark.kind === 'path' ? ('round' as const) : undefined,
  }
  if (mark.kind === 'line') return <line x1={mark.x1} y1={mark.y1} x2={mark.x2} y2={mark.y2} {...stroke} />
  const fill = paint(mark.fill)
  if (mark.kind === 'path') return <path d={mark.d} fill={fill} {...stroke} />
  if (mark.kind === 'rect') return <rect x={mark.x} y={mark.y} width={mark.w} height={mark.h} fill={fill} {...stroke} />
  return <circle cx={mark.cx} cy={mark.cy} r={mark.r} fill={fill} {...stroke} />
}

function TextSvg({ mark }: { mark: TextMark }) {
  const halo = mark.halo && {
    paintOrder: 'stroke',
    stroke: 'var(--paper)',
    strokeWidth: 4,
    strokeLinejoin: 'round' as const,
  }
  return (
    <text
      x={mark.x}
      y={mark.y}
      textAnchor={mark.anchor === 'start' ? undefined : mark.anchor}
      fill={paint(mark.role)}
      fontSize={mark.size}
      fontWeight={mark.weight}
      fontFamily={FACES[mark.face]}
      {...halo}
    >
      {mark.text}
    </text>
  )
}

/** The same numbers as a table, for whoever cannot or need not see the picture. */
export const Figures = memo(function Figures({ tables }: { tables: readonly DrawingTable[] }) {
  return (
    <details className="mt-2 max-w-2xl no-print">
      <summary>{sameInFigures}</summary>
      {tables.map((table) => (
        <Sideways key={table.caption} of={table.caption} className="mb-6">
          <table>
            <caption className="pb-1 text-left font-bold">{table.caption}</caption>
            <thead>
              <tr>
                {table.head.map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row) => (
                <tr key={row.join(' ')}>
                  {row.map((cell, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: cells stand in the head's order
                    <td key={i} className={i > 0 ? 'tabular-nums' : undefined}>
                      {cell}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Sideways>
      ))}
    </details>
  )
})
