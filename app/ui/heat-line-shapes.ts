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

type How = Pick<HeatView, 'lanes' | 'say'>
/** The tables are the same for every shape, and told once. */
const drawBare = (view: HeatView, facts: HeatFacts): Drawing => ({ ...drawHeat(view, facts), tables: [] })

const shapeOf = ({ show, media, width, standing }: Size, facts: HeatFacts, { lanes, say }: How): HeatShape => {
  const view = { width, standing, lanes, ...(say && !standing ? { say } : {}) }
  return { show, media, view, drawing: drawBare(view, facts) }
}

/** Shapes alone, for what is drawn again and again. */
export const heatDraft = (facts: HeatFacts, sizes: readonly Size[], how: How): HeatPictures => ({
  facts,
  shapes: sizes.map((size) => shapeOf(size, facts, how)),
  printed: null,
  tables: [],
})

export function heatPictures(
  facts: HeatFacts,
  sizes: readonly Size[],
  how: How & { readonly paper: boolean },
): HeatPictures {
  const { lanes, say } = how
  const printed = how.paper
    ? drawBare({ width: PAPER_PX, standing: false, lanes, low: 'paper', ...(say ? { say } : {}) }, facts)
    : null
  const { tables } = drawHeat({ width: PHONE.width, standing: true, lanes: false }, facts)
  return { ...heatDraft(facts, sizes, how), printed, tables }
}
