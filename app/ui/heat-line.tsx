import { drawHeatLine, type HeatLineInput } from '@/lib/export/heat-line'
import { DrawingSvg, Figures } from './drawing'

export type HeatLineProps = Omit<HeatLineInput, 'width' | 'standing' | 'compact'>

/** Lying on wide screens, without lanes where it is narrower, standing on a phone; the browser shows one of them. */
export function HeatLine(props: HeatLineProps) {
  const wide = drawHeatLine({ ...props, width: 1232, standing: false })
  const middle = drawHeatLine({ ...props, lanes: false, width: 952, standing: false })
  const narrow = drawHeatLine({ ...props, lanes: false, width: 740, standing: false })
  const standing = drawHeatLine({ ...props, lanes: false, width: 362, standing: true })
  return (
    <>
      <figure className="m-0 hidden min-[1180px]:block">
        <DrawingSvg drawing={wide} />
      </figure>
      <figure className="m-0 hidden min-[880px]:max-[1179px]:block">
        <DrawingSvg drawing={middle} />
      </figure>
      <figure className="m-0 hidden min-[700px]:max-[879px]:block">
        <DrawingSvg drawing={narrow} />
      </figure>
      <figure className="m-0 min-[700px]:hidden">
        <DrawingSvg drawing={standing} />
      </figure>
      <Figures drawing={wide} />
    </>
  )
}
