import type { Publish } from '../plan/publish'

/** Where the card is read, as its files print and scan it. */
export interface Published extends Publish {
  /** The author's own page, else the one on this server; null where nobody else can reach it. */
  readonly at: string | null
}
export const NOWHERE: Published = { at: null }

/** What a search engine asks for before it shows more than a line, and what it would also like, in the author's words. */
export interface StillNeeded {
  readonly required: readonly string[]
  readonly helpful: readonly string[]
}
