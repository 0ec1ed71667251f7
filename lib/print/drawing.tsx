import { Circle, Line, Path, Rect, Svg, Text } from '@react-pdf/renderer'
import type { Drawing, Face, Mark, Role } from '../export/drawing'
import { CONDENSED, SANS, SERIF } from './fonts'

/** Roles as paper shows them: grey, with the cut face in its own tones. */
const INK: Readonly<Record<Role, string>> = {
  paper: '#FFFFFF',
  leaf: '#F2F2F2',
  band: '#DEDEDE',
  ink: '#1D1814',
  'ink-2': '#333333',
  'ink-3': '#555555',
  edge: '#777777',
  rule: '#BDBDBD',
  ember: '#000000',
  cool: '#333333',
  'tone-1': '#8C2F2E',
  'tone-2': '#AD4C47',
  'tone-3': '#CC8474',
  'tone-4': '#DDB59C',
  'tone-5': '#EADBC6',
  crust: '#3B281B',
  bone: '#F5EEDD',
  marrow: '#D9BFA0',
}
const FAMILY: Readonly<Record<Face, readonly string[]>> = { condensed: CONDENSED, sans: SANS, serif: SERIF }

type Outlined = { stroke?: Role; width?: number; dash?: readonly number[]; round?: boolean; fill?: Role }
const outline = (mark: Outlined) => ({
  fill: mark.fill ? INK[mark.fill] : 'none',
  ...(mark.stroke ? { stroke: INK[mark.stroke], strokeWidth: mark.width ?? 1 } : {}),
  ...(mark.dash ? { strokeDasharray: mark.dash.join(' ') } : {}),
  ...(mark.round ? { strokeLinecap: 'round' as const, strokeLineJoin: 'round' as const } : {}),
})

function Lettering({ mark }: { mark: Extract<Mark, { kind: 'text' }> }) {
  const style = { fontFamily: [...FAMILY[mark.face]], fontWeight: mark.weight, fontSize: mark.size }
  const common = { x: mark.x, y: mark.y, textAnchor: mark.anchor, style }
  return (
    <>
      {mark.halo && (
        <Text {...common} fill={INK.paper} stroke={INK.paper} strokeWidth={4}>
          {mark.text}
        </Text>
      )}
      <Text {...common} fill={INK[mark.role]}>
        {mark.text}
      </Text>
    </>
  )
}

function Drawn({ mark }: { mark: Mark }) {
  switch (mark.kind) {
    case 'line':
      return <Line x1={mark.x1} y1={mark.y1} x2={mark.x2} y2={mark.y2} {...outline(mark)} />
    case 'path':
      return <Path d={mark.d} {...outline(mark)} />
    case 'rect':
      return <Rect x={mark.x} y={mark.y} width={mark.w} height={mark.h} {...outline(mark)} />
    case 'circle':
      return <Circle cx={mark.cx} cy={mark.cy} r={mark.r} {...outline(mark)} />
    case 'text':
      return <Lettering mark={mark} />
  }
}

/** A picture on paper, `width` points wide. */
export function DrawingOnPaper({ drawing, width }: { drawing: Drawing; width: number }) {
  return (
    <Svg
      width={width}
      height={(width * drawing.height) / drawing.width}
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
    >
      {drawing.marks.map((mark, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: marks have no other name and never move
        <Drawn key={i} mark={mark} />
      ))}
    </Svg>
  )
}
