import 'server-only'
import { Worker } from 'node:worker_threads'
import { Beside } from '../beside'
import { type Asked, answerTo, type Told } from './live-answer'

const holder = globalThis as { emberslateLive?: Beside<Asked, Told> }
holder.emberslateLive ??= new Beside('live forecast', () => new Worker(new URL('./live-thread.ts', import.meta.url)))
const thread = holder.emberslateLive

export const askLive = async (question: Omit<Asked, 'turn'>): Promise<Told> =>
  (await thread.ask(question)) ?? answerTo({ turn: 0, ...question })
