import type { OwnPlan } from '@/lib/card/own-plan'
import type { CardBasis, Filled } from '@/lib/card/own-wish'
import type { Result } from '@/lib/refusals'
import type { Asked, Told } from './own-worker'

let worker: Worker | undefined
let turn = 0
/** Questions that the worker has not answered yet. */
let open = 0

const start = () => new Worker(new URL('./own-worker.ts', import.meta.url), { type: 'module' })

/** Loads the model ahead of the first question; again where a service worker now stands between, so that it keeps it. */
export function warmUp(): void {
  if (typeof Worker === 'undefined') return
  const before = worker
  try {
    worker = start()
  } catch {
    worker = undefined
  }
  if (open === 0) before?.terminate()
}

/** The reader's own plan by this browser's worker; where none runs, by the page itself. */
export async function ownHere(basis: CardBasis, filled: Filled): Promise<Result<OwnPlan>> {
  if (worker) {
    const asked = worker
    const answer = await ask(asked, { turn: ++turn, basis, filled })
    if (answer) return answer
    if (worker === asked) worker = undefined
  }
  return (await import('./own-answer')).answerOwn(basis, filled)
}

function ask(by: Worker, asked: Asked): Promise<Result<OwnPlan> | undefined> {
  return new Promise((resolve) => {
    const control = new AbortController()
    open++
    const done = (answer?: Result<OwnPlan>) => {
      open--
      control.abort()
      resolve(answer)
    }
    const { signal } = control
    by.addEventListener(
      'message',
      ({ data }: MessageEvent<Told>) => {
        if (data.turn === asked.turn) done(data.answer)
      },
      { signal },
    )
    by.addEventListener('error', () => done(), { signal })
    by.postMessage(asked)
  })
}
