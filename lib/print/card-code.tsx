import { Path, Rect, Svg, View } from '@react-pdf/renderer'
import type { QrDrawing } from '../export/qr'
import { textWidth } from '../export/text-width'
import { CELL, FOOT, set, tall } from './card-lettering'
import { PRINT } from './sheet'
import { Words } from './words'

const PT_PER_MM = 72 / 25.4
/** The code alone, without its quiet zone: phones at arm's length read 20 mm. Common practice, no source. */
export const CODE_MM = 22
const MOST_LINES = 4
const ABOVE = 8

/** An address over lines: it may end one after a stroke, a point or a hyphen, else anywhere. */
export function addressLines(address: string, roomPt: number): string[] {
  const fits = (text: string) => textWidth(text, FOOT) <= roomPt
  const lines = ['']
  for (const piece of address.replace(/^https?:\/\//, '').split(/(?<=[/.?&=_-])/)) {
    if (!fits(lines.at(-1) + piece) && lines.at(-1) !== '') lines.push('')
    for (const letter of piece) {
      if (!fits(lines.at(-1) + letter)) lines.push('')
      lines[lines.length - 1] += letter
    }
  }
  return lines.length > MOST_LINES ? [...lines.slice(0, MOST_LINES - 1), '…'] : lines
}

interface CodeProps {
  readonly code: QrDrawing
  readonly at: string
  readonly words: string
  readonly width: number
}
function placed({ code, at, words, width }: CodeProps) {
  const side = (CODE_MM * PT_PER_MM * code.size) / code.modules
  const quiet = (side - CODE_MM * PT_PER_MM) / 2
  const beside = width - side + quiet
  return { side, quiet, lines: addressLines(at, beside), wordsTall: tall(words, beside, CELL, 1) }
}

/** The code to the card's page, as vectors, black on white, with its quiet zone; its words and its address beside it. */
export function Code(props: CodeProps) {
  const { side, quiet, lines } = placed(props)
  const { code } = props
  return (
    <View
      wrap={false}
      style={{ flexDirection: 'row', width: props.width + quiet, marginTop: ABOVE, marginLeft: -quiet }}
    >
      <Svg width={side} height={side} viewBox={`0 0 ${code.size} ${code.size}`}>
        <Rect x={0} y={0} width={code.size} height={code.size} fill={PRINT.white} />
        <Path d={code.path} fill="#000000" />
      </Svg>
      <View style={{ flex: 1, paddingTop: quiet }}>
        <Words style={set(CELL)}>{props.words}</Words>
        <View style={{ marginTop: 3 }}>
          {lines.map((line) => (
            <Words key={line} style={{ ...set(FOOT), color: PRINT.second }}>
              {line}
            </Words>
          ))}
        </View>
      </View>
    </View>
  )
}
export function codeHeight(props: CodeProps): number {
  const { side, quiet, lines, wordsTall } = placed(props)
  return ABOVE + Math.max(side, quiet + wordsTall + 3 + lines.length * FOOT.size * FOOT.lineHeight)
}
