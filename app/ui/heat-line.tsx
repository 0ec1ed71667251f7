import type { Drawing } from '@/lib/export/drawing'
import { drawHeatLine, type HeatLineInput, heatLineFacts } from '@/lib/export/heat-line'
import { readoutOf } from '@/lib/export/heat-line-readout'
import { DrawingSvg, Figures } from './drawing'
import { HeatLineReadout } from './heat-line-readout'

export type HeatLineProps = Omit<HeatLineInput, 'width' | 'standing' | 'compact'>

/** Each shape with the screens it is for; the browser shows one of them. */
const SHAPES = [
  { show: 'hidden min-[1180px]:block', width: 1232, standing: false, withLanes: true },
  { show: 'hidden min-[880px]:max-[1179px]:block', width: 952, standing: false, withLanes: false },
  { show: 'hidden min-[700px]:max-[879px]:block', width: 740, standing: false, withLanes: false },
  { show: 'min-[700px]:hidden', width: 362, standing: true, withLanes: false },
] as const

/** The picture of the widest screens, as the first of the shapes draws it. */
export const widestHeatLine = (props: HeatLineProps): Drawing =>
  drawHeatLine({ ...props, width: SHAPES[0].width, standing: SHAPES[0].standing })

/** Lying on wide screens, without lanes where it is narrower, standing on a phone; the same figures as a table below. */
export function HeatLine(props: HeatLineProps) {
  const facts = heatLineFacts({ ...props, width: 0, standing: false })
  if (!facts) return null
  const shapes = SHAPES.map(({ show, width, standing, withLanes }) => {
    const input: HeatLineInput = { ...props, lanes: props.lanes && withLanes, width, standing }
    const drawing = drawHeatLine(input, facts)
    return { show, drawing, readout: drawing.axis && readoutOf(input, facts, drawing.axis) }
  })
  return (
    <>
      {shapes.map(({ show, drawing, readout }) => (
        <figure key={show} className={`m-0 ${show}`}>
          {drawing.axis && readout ? (
            <HeatLineReadout
              readout={readout}
              axis={drawing.axis}
              size={{ width: drawing.width, height: drawing.height }}
            >
              <DrawingSvg drawing={drawing} />
            </HeatLineReadout>
          ) : (
            <DrawingSvg drawing={drawing} />
          )}
        </figure>
      ))}
      {shapes[0] && <Figures drawing={shapes[0].drawing} />}
    </>
  )
}
