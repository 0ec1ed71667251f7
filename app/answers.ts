import { parentPort } from 'node:worker_threads'

type Turn = { readonly turn: number }
/** What a thread tells where a question cannot be worked out; whoever asked hears it as a fault of their own. */
export type Fault = Turn & { readonly fault: string }

/** Answers, in a thread beside the server, whatever it is asked. `given`: buffers that need not be copied. */
export function answers<Asked extends Turn, Told extends Turn>(
  answerTo: (asked: Asked) => Told | Promise<Told>,
  given: (told: Told) => readonly ArrayBuffer[] = () => [],
): void {
  parentPort?.on('message', async (asked: Asked) => {
    try {
      const told = await answerTo(asked)
      parentPort?.postMessage(told, [...given(told)])
    } catch (fault) {
      const why = fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)
      parentPort?.postMessage({ turn: asked.turn, fault: why } satisfies Fault)
    }
  })
}
