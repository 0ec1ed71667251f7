import { type HeatFacts, type HeatPlan, type HeatView, heatLineFacts } from '@/lib/export/heat-line'
import { HeatLineFigure } from './heat-line-figure'
import { type HeatPictures, heatPictures, PAGE_SIZES } from './heat-line-shapes'

export type HeatLineProps = HeatPlan & Pick<HeatView, 'lanes' | 'say'>

/** Lying on wide screens, without lanes where it is narrower, standing on a phone, and for paper. */
export const pagePictures = (facts: HeatFacts, { lanes, say }: Pick<HeatView, 'lanes' | 'say'>): HeatPictures =>
  heatPictures(facts, PAGE_SIZES, { lanes, say, paper: true })

/** The heat line of a plan as wide as the page; the same figures as tables below. */
export function HeatLine(props: HeatLineProps) {
  const facts = heatLineFacts(props)
  return facts && <HeatLineFigure pictures={pagePictures(facts, props)} />
}
