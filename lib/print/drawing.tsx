import { Circle, Line, Path, Rect, Svg, Text, View } from '@react-pdf/renderer'
import type { Drawing, Face, Mark, PlainRole, Role, TextMark } from '../export/drawing'
import { textBox, textWidth } from '../export/text-width'
import { isShade, shadeColour } from '../export/tones'
import { asSet } from '../plan/printable'
import { CONDENSED, FIGURES, SANS, SERIF } from './fonts'

/** Roles as a grey printer shows them, with the cut face in its own tones: hue is never the only difference. */
const INK: Readonly<Record<PlainRole, string>> = {
  paper: '#FFFFFF',
  leaf: '#F2F2F2',
  band: '#DEDEDE',
  ink: '#000000',
  'ink-2': '#333333',
  'ink-3': '#555555',
  edge: '#777777',
  rule: '#BDBDBD',
  ember: '#000000',
  cool: '#333333',
  seam: '#000000',
  crust: '#3B281B',
  bone: '#F5EEDD',
  marrow: '#D9BFA0',
  fat: '#FAF5E8',
  night: '#000000',
  star: '#FFFFFF',
}
const inkOf = (role: Role) => (isShade(role) ? shadeColour(role) : INK[role])
const FAMILIES: Readonly<Record<Face, string[]>> = { condensed: CONDENSED, sans: SANS, serif: SERIF }
/** [fontkit] hhea ascent of the printed faces, em: a line's box begins so far above its baseline. */
const ASCENT_EM: Readonly<Record<Face, number>> = { condensed: 0.9, sans: 0.9, serif: 0.952 }

/**
 * A picture on paper, `width` points wide, with `air` of its own pixels about it. Its lettering is laid over it as page text: the printer's own SVG text drops
 * font features, and figures must be lining and tabular.
 */
export function DrawingOnPaper({ drawing, width, air = 0 }: { drawing: Drawing; width: number; air?: number }) {
  const [across, down] = [drawing.width + 2 * air, drawing.height + 2 * air]
  const scale = width / across
  const height = down * scale
  const texts = drawing.marks.filter((mark): mark is TextMark => mark.kind === 'text')
  const haloed = texts.filter((mark) => mark.halo)
  return (
    <View style={{ width, height, position: 'relative' }}>
      <Svg width={width} height={height} viewBox={`${-air} ${-air} ${across} ${down}`}>
        {drawing.marks.map((mark, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: marks have no other name and never move
          <Shape key={i} mark={mark} />
        ))}
        {haloed.map((mark) => (
          <Halo key={`${mark.x} ${mark.y} ${mark.text}`} mark={mark} />
        ))}
      </Svg>
      {texts.map((mark) => (
        <Lettering key={`${mark.x} ${mark.y} ${mark.text}`} mark={mark} scale={scale} air={air} />
      ))}
    </View>
  )
}

type Outlined = { stroke?: Role; width?: number; dash?: readonly number[]; round?: boolean; fill?: Role }
const outline = (mark: Outlined) => ({
  fill: mark.fill ? inkOf(mark.fill) : 'none',
  ...(mark.stroke ? { stroke: inkOf(mark.stroke), strokeWidth: mark.width ?? 1 } : {}),
  ...(mark.dash ? { strokeDasharray: mark.dash.join(' ') } : {}),
  ...(mark.round ? { strokeLinecap: 'round' as const } : {}),
})
function Shape({ mark }: { mark: Mark }) {
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
      return null
  }
}

/** PDF text has no outline of another colour, so the paper edge is a box. */
function Halo({ mark }: { mark: TextMark }) {
  const { left, right, top, bottom } = textBox(mark)
  return <Rect x={left - 1} y={top} width={right - left + 2} height={bottom - top} fill={INK.paper} />
}

function Lettering({ mark, scale, air }: { mark: TextMark; scale: number; air: number }) {
  // A little wider than the letters, so that rounding never breaks the line.
  const room = (textWidth(mark.text, mark) + 14) * scale
  const shift = { start: 0, middle: room / 2, end: room }[mark.anchor]
  return (
    <Text
      style={{
        position: 'absolute',
        left: (mark.x + air) * scale - shift,
        top: (mark.y + air - ASCENT_EM[mark.face] * mark.size) * scale,
        width: room,
        textAlign: ({ start: 'left', middle: 'center', end: 'right' } as const)[mark.anchor],
        fontFamily: FAMILIES[mark.face],
        fontSize: mark.size * scale,
        fontWeight: mark.weight,
        fontFeatureSettings: FIGURES,
        color: inkOf(mark.role),
      }}
    >
      {asSet(mark.text)}
    </Text>
  )
}
