import type { ReadersWay } from '@/lib/plan/as-read'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import type { UnitSystem } from '@/lib/units'
import type { Asked, Told } from '../forecast-worker'
import type { Preview } from './preview'

export type PreviewAnswer =
  | { readonly ok: true; readonly value: Preview }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly sentence: string }

/** A worker that is slower than this leaves the question to the server; one that fails is not asked again. */
const PATIENCE_MS = 4000

let worker: Worker | undefined
let failed = false
let turn = 0

/** The preview by this browser's own worker, started when it is first asked; none where it does not run. */
export function previewHere(
  document: ShootDocument,
  units: UnitSystem | undefined,
  way: ReadersWay,
): Promise<PreviewAnswer | undefined> {
  if (failed || units === undefined || typeof Worker === 'undefined') return Promise.resolve(undefined)
  try {
    worker ??= new Worker(new URL('../forecast-worker.ts', import.meta.url), { type: 'module' })
  } catch {
    failed = true
    return Promise.resolve(undefined)
  }
  return ask(worker, { turn: ++turn, document, units, way })
}

function ask(by: Worker, asked: Asked): Promise<PreviewAnswer | undefined> {
  return new Promise((resolve) => {
    const control = new AbortController()
    const done = (answer: PreviewAnswer | undefined) => {
      clearTimeout(timer)
      control.abort()
      resolve(answer)
    }
    const timer = setTimeout(() => done(undefined), PATIENCE_MS)
    const { signal } = control
    by.addEventListener(
      'message',
      ({ data }: MessageEvent<Told>) => {
        if (data.turn === asked.turn) done(data.answer)
      },
      { signal },
    )
    by.addEventListener(
      'error',
      () => {
        failed = true
        done(undefined)
      },
      { signal },
    )
    by.postMessage(asked)
  })
}
