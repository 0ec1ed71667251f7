import 'server-only'
import { Worker } from 'node:worker_threads'
import type { Shoot } from '@/lib/plan/shoot'
import { Beside, type Question } from './beside'
import type { Asked, Told } from './print-answer'
import { whoseIs } from './whose'

const holder = globalThis as { emberslatePrints?: Beside<Asked, Told> }
holder.emberslatePrints ??= new Beside(
  'print',
  () => new Worker(new URL('./print-thread.ts', import.meta.url)),
  'print',
)
export const printThread = holder.emberslatePrints

async function askPrint(question: Question<Asked>, shoot: Shoot): Promise<Told> {
  const told = await printThread.ask(question, whoseIs(shoot))
  if (told) return told
  // The printer is large, and where the thread runs the server itself has no need of it.
  const { answerTo } = await import('./print-answer')
  return answerTo({ turn: 0, ...question } as Asked)
}

export async function printedBeside(shoot: Shoot, sheet: Exclude<Question<Asked>, { frames: unknown }>) {
  const told = await askPrint(sheet, shoot)
  if ('pdf' in told) return told.pdf
  throw new Error('Asked for a sheet, the printer told of something else.')
}
export async function drawnBeside(shoot: Shoot, frames: readonly string[]): Promise<readonly Uint8Array[]> {
  const told = await askPrint({ frames }, shoot)
  if ('pictures' in told) return told.pictures
  throw new Error('Asked for frames, the printer told of something else.')
}
