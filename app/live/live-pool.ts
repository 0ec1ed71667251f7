import 'server-only'
import { Worker } from 'node:worker_threads'
import { Beside } from '../beside'
import { type Asked, answerTo, type Told } from './live-answer'

const holder = globalThis as { emberslateLive?: Beside<Asked, Told> }
/** With its memory of the day an answer takes a tenth of a second; elsewhere the whole log would have to be sent and folded anew. */
holder.emberslateLive ??= new Beside(
  'live forecast',
  () => new Worker(new URL('./live-thread.ts', import.meta.url)),
  null,
)
const thread = holder.emberslateLive

export const askLive = async (question: Omit<Asked, 'turn'>): Promise<Told> =>
  (await thread.here(question)) ?? answerTo({ turn: 0, ...question })
