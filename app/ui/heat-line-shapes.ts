import type { Drawing, DrawingTable } from '@/lib/export/drawing'
import { drawHeat } from '@/lib/export/heat-line-draw'
import type { HeatFacts, HeatView } from '@/lib/export/heat-line-facts'

/** A shape of the picture and the screens it is for. */
export interface HeatShapeView {
  readonly media: string
  readonly view: HeatView
  /** Drawn already, without now. */
  readonly drawing?: Drawing
}
/** The browser shows one of them. */
export interface HeatShape extends HeatShapeView {
  readonly show: string
  readonly drawing: Drawing
}
/** The heat line as a page shows it: every shape, what it is drawn from, and the same in figures. */
export interface HeatPictures {
  readonly facts: HeatFacts
  readonly shapes: readonly HeatShape[]
  /** For paper, without now; null where the page prints one of the shapes. */
  readonly printed: Drawing | null
  readonly tables: readonly DrawingTable[]
}
type Size = Pick<HeatShape, 'show' | 'media'> & Pick<HeatView, 'width' | 'standing'>

const PHONE = { show: 'min-[740px]:hidden', media: '(max-width: 739px)', width: 332, standing: true } as const
/** Where the picture has the page's whole width. */
export const PAGE_SIZES: readonly Size[] = [
  { show: 'hidden min-[1280px]:block', media: '(min-width: 1280px)', width: 1232, standing: false },
  {
    show: 'hidden min-[1064px]:max-[1279px]:block',
    media: '(min-width: 1064px) and (max-width: 1279px)',
    width: 1016,
    standing: false,
  },
  {
    show: 'hidden min-[740px]:max-[1063px]:block',
    media: '(min-width: 740px) and (max-width: 1063px)',
    width: 692,
    standing: false,
  },
  PHONE,
]
/** Beside the form of the plan. */
export const PLAN_SIZES: readonly Size[] = [
  { show: 'hidden min-[1280px]:block', media: '(min-width: 1280px)', width: 892, standing: false },
  {
    show: 'hidden min-[740px]:max-[1279px]:block',
    media: '(min-width: 740px) and (max-width: 1279px)',
    width: 660,
    standing: false,
  },
  PHONE,
]
/** A sheet of A4 lying, less its margins: 12 px are 9 points there, and more on A3. */
const PAPER_PX = 1016

export function heatPictures(
  facts: HeatFacts,
  sizes: readonly Size[],
  how: Pick<HeatView, 'lanes' | 'say'> & { readonly paper: boolean },
): HeatPictures {
  const { lanes, say } = how
  // The tables are the same for every shape, and told once.
  const draw = (view: HeatView): Drawing => ({ ...drawHeat(view, facts), tables: [] })
  const shapes = sizes.map(({ show, media, width, standing }): HeatShape => {
    const view = { width, standing, lanes, ...(say && !standing ? { say } : {}) }
    return { show, media, view, drawing: draw(view) }
  })
  const printed = how.paper
    ? draw({ width: PAPER_PX, standing: false, lanes, low: 'paper', ...(say ? { say } : {}) })
    : null
  const { tables } = drawHeat({ width: PHONE.width, standing: true, lanes: false }, facts)
  return { facts, shapes, printed, tables }
}
