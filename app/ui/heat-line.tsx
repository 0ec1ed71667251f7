import { type HeatPlan, type HeatView, heatLineFacts } from '@/lib/export/heat-line'
import { HeatLineFigure } from './heat-line-figure'
import { type HeatPictures, heatPictures, PAGE_SIZES } from './heat-line-shapes'

export type HeatLineProps = HeatPlan & Pick<HeatView, 'lanes' | 'say'>

/** Lying on wide screens, without lanes where it is narrower, standing on a phone, and for paper. */
export function pagePictures(props: HeatLineProps): HeatPictures | null {
  const facts = heatLineFacts(props)
  return facts && heatPictures(facts, PAGE_SIZES, { lanes: props.lanes, say: props.say, paper: true })
}

/** The heat line of a plan as wide as the page; the same figures as tables below. */
export function HeatLine(props: HeatLineProps) {
  const pictures = pagePictures(props)
  return pictures && <HeatLineFigure pictures={pictures} />
}
