import { Worker } from 'node:worker_threads'
import { describe, expect, it, vi } from 'vitest'
import { Beside } from '../../app/beside'

type Asked = { readonly turn: number; readonly what: string }
type Told = { readonly turn: number; readonly twice: string }

/** Answers as `app/answers.ts` does; "end" ends it. */
const SCRIPT = `
  const { parentPort } = require('node:worker_threads')
  parentPort.on('message', ({ turn, what }) => {
    if (what === 'end') process.exit(3)
    parentPort.postMessage(what === 'bad' ? { turn, fault: 'no such cut' } : { turn, twice: what + what })
  })`
const beside = () => new Beside<Asked, Told>('test', () => new Worker(SCRIPT, { eval: true }), null)

describe('the thread beside the server', () => {
  it('tells the fault of one question to whoever asked it, and answers the others', async () => {
    const thread = beside()
    const [before, bad, after] = await Promise.allSettled(['a', 'bad', 'b'].map((what) => thread.ask({ what }, 'lamb')))
    expect([before, after].map((one) => one?.status === 'fulfilled' && one.value?.twice)).toEqual(['aa', 'bb'])
    expect(bad).toMatchObject({ status: 'rejected', reason: { message: 'no such cut' } })
  })
  it('that ends leaves its questions to the server, and is there again for the next', async () => {
    const said = vi.spyOn(process.stderr, 'write').mockReturnValue(true)
    const thread = beside()
    await thread.ask({ what: 'a' }, 'lamb')
    expect(await thread.ask({ what: 'end' }, 'lamb')).toBeUndefined()
    expect((await thread.ask({ what: 'c' }, 'lamb'))?.twice).toBe('cc')
    expect(said).toHaveBeenCalledOnce()
    said.mockRestore()
  })
})
