import type { ReadersWay } from '@/lib/plan/as-read'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import type { UnitSystem } from '@/lib/units'
import type { Asked, Told } from '../forecast-worker'
import type { HeatPictures } from '../ui/heat-line-shapes'
import type { Preview } from './preview'

export type PreviewAnswer =
  | { readonly ok: true; readonly value: Preview }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly sentence: string }

interface Question {
  readonly document: ShootDocument
  readonly units: UnitSystem
  readonly way: ReadersWay
}

/** A worker that is slower than this leaves the question to the server; one that fails is not asked again. */
const PATIENCE_MS = 4000

/** One draws drafts, the other works out the whole: a key that is typed in the middle of a whole is drawn at once. */
const drafts = helper()
const wholes = helper()
let turn = 0

/** Both workers are loaded, and their code made fast, before the first key that waits for them. */
export function readyHere(question: Question): void {
  void draftHere(question, undefined)
  void previewHere(question)
}

/** The preview by this browser's own worker, started when it is first asked; none where it does not run. */
export async function previewHere(question: Question): Promise<PreviewAnswer | undefined> {
  const told = await wholes({ ...question, turn: ++turn, of: 'all' })
  return told?.of === 'all' ? told.answer : undefined
}

/** The heat line as fewer cooks have it, in the one shape that is shown; none while a field is wrong. */
export async function draftHere(question: Question, show: string | undefined): Promise<HeatPictures | undefined> {
  const told = await drafts({ ...question, turn: ++turn, of: 'line', show })
  return told?.of === 'line' ? told.line : undefined
}

/** A worker of its own. What newer typing overtakes is answered with nothing, as is everything where no worker runs. */
function helper() {
  let worker: Worker | undefined
  let failed = typeof Worker === 'undefined'
  const waiting = new Map<number, (told: Told | undefined) => void>()
  const settle = (upTo: number, told?: Told) => {
    for (const [turn, done] of waiting) {
      if (turn > upTo) continue
      waiting.delete(turn)
      done(turn === upTo ? told : undefined)
    }
  }
  const fail = () => {
    failed = true
    settle(Number.POSITIVE_INFINITY)
  }
  const start = () => {
    const started = new Worker(new URL('../forecast-worker.ts', import.meta.url), { type: 'module' })
    started.onmessage = ({ data }: MessageEvent<Told>) => settle(data.turn, data)
    started.onerror = fail
    return started
  }
  return (asked: Asked): Promise<Told | undefined> => {
    if (failed) return Promise.resolve(undefined)
    try {
      worker ??= start()
    } catch {
      fail()
      return Promise.resolve(undefined)
    }
    worker.postMessage(asked)
    return new Promise((resolve) => {
      const timer = setTimeout(() => settle(asked.turn), PATIENCE_MS)
      waiting.set(asked.turn, (told) => {
        clearTimeout(timer)
        resolve(told)
      })
    })
  }
}
