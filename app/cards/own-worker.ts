/// <reference lib="webworker" />
import type { OwnPlan } from '@/lib/card/own-plan'
import type { CardBasis, Filled } from '@/lib/card/own-wish'
import type { Result } from '@/lib/refusals'
import { answerOwn } from './own-answer'

/** The model in the reader's browser: their own roast needs no network once this has come. */
export interface Asked {
  readonly turn: number
  readonly basis: CardBasis
  readonly filled: Filled
}
export interface Told {
  readonly turn: number
  readonly answer: Result<OwnPlan>
}

self.onmessage = ({ data: { turn, basis, filled } }: MessageEvent<Asked>) =>
  self.postMessage({ turn, answer: answerOwn(basis, filled) } satisfies Told)
