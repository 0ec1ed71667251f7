import {
  type CardBasis,
  type Choice,
  cookerChoices,
  cookOf,
  donenessChoices,
  startChoices,
  thicknessBounds,
} from '@/lib/card/own-wish'
import { rulerWords } from '@/lib/card/sizes'
import { fromTo } from '../words/own-roast'

/** What a reader is asked, with the answers there are; made on the server, so that the page need not load the catalogue. */
export interface OwnQuestions {
  readonly cooker: string
  readonly cookers: readonly Choice[]
  readonly done: readonly Choice[]
  readonly starts: readonly Choice[]
  /** "From 6 cm / 2¼ in to 19 cm / 7½ in." */
  readonly bounds: string
}
export function ownQuestions(basis: CardBasis): OwnQuestions {
  const { least, most } = thicknessBounds(basis)
  return {
    cooker: cookOf(basis).cooker.kind,
    cookers: cookerChoices(basis),
    done: donenessChoices(basis),
    starts: startChoices,
    bounds: fromTo(rulerWords(least), rulerWords(most)),
  }
}
