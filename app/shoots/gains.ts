import type { Measurable } from '@/lib/model/what-narrows'

/** What measuring a thing does to the window at pull, for the field it stands under. */
export interface Gain {
  readonly cook: number
  readonly what: Measurable
  readonly sentence: string
}
