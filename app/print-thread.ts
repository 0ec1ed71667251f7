import { answers } from './answers'
import { answerTo } from './print-answer'

/** The thread beside the server that prints sheets and draws overlays: a card takes a quarter of a second, a run of frames a whole one. */
answers(answerTo)
