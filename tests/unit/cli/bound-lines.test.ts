import { once } from 'node:events'
import { createServer } from 'node:http'
import { type AddressInfo, connect, type Socket } from 'node:net'
import { afterEach, describe, expect, it } from 'vitest'
import { boundLines } from '../../../lib/cli/bound-lines.mjs'
import { LINE } from '../../../lib/cli/refuse-early.mjs'

let server: ReturnType<typeof createServer>
const lines: Socket[] = []
afterEach(() => {
  for (const line of lines.splice(0)) line.destroy()
  server.closeAllConnections()
  server.close()
})

async function listening(options: object, most: number, tell: (words: string) => void) {
  server = createServer({ ...LINE, ...options }, (_request, response) => response.end('here'))
  boundLines(server, most, tell)
  await once(server.listen(0, '127.0.0.1'), 'listening')
  return (server.address() as AddressInfo).port
}
async function open(port: number): Promise<Socket> {
  const line = connect(port, '127.0.0.1').on('error', () => undefined)
  lines.push(line)
  await once(line, 'connect')
  return line
}
const ended = (line: Socket) => (line.closed ? Promise.resolve() : once(line.resume(), 'close'))
const ask = async (port: number) => (await fetch(`http://127.0.0.1:${port}/`)).text()

describe('lines that never end', () => {
  it('without a word, or with half a head, are ended, while whoever asks is answered', async () => {
    const port = await listening({ headersTimeout: 300, connectionsCheckingInterval: 50 }, 1000, () => undefined)
    const idle = await Promise.all(Array.from({ length: 300 }, () => open(port)))
    for (const line of idle.slice(0, 20)) line.write('GET / HTTP/1.1\r\nHost: a\r\n')
    expect(await ask(port)).toBe('here')
    await Promise.all(idle.map(ended))
    // What the app itself is started with is no longer than half a minute.
    expect(LINE.headersTimeout).toBeLessThanOrEqual(30_000)
  })

  it('are refused beyond so many, with one line that says so, and taken again when some have ended', async () => {
    const told: string[] = []
    const port = await listening({}, 5, (words) => told.push(words))
    const held = await Promise.all([1, 2, 3, 4, 5].map(() => open(port)))
    await expect(ask(port)).rejects.toThrow()
    await expect(ask(port)).rejects.toThrow()
    expect(told).toEqual([expect.stringMatching(/^5 lines are open at once; further ones are refused until some end/)])
    const [first] = held
    first?.destroy()
    await expect.poll(() => ask(port).catch(() => 'refused')).toBe('here')
  })
})
