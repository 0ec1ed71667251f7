import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { appendLog } from '../../lib/data/append-log'
import { createShoot } from '../../lib/data/create-shoot'
import { listen, listenerCount } from '../../lib/data/listeners'
import { loadKinds, loadLog } from '../../lib/data/load-log'
import { instant } from '../../lib/units'
import { mark, reading } from '../unit/log/lines'
import { closeAll, freshDatabase } from './real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
let shoot: string
beforeEach(async () => {
  await freshDatabase()
  const made = await createShoot(DOCUMENT, 'write-000001')
  shoot = made.ok ? made.value.id : ''
})
afterEach(closeAll)

const SENT = instant(1_800_000_000_000)
const entries = (count: number) => Array.from({ length: count }, (_, i) => reading(i, 10 + i).document)
const append = (...documents: unknown[]) => appendLog(shoot, SENT, documents)
const became = async (sending: ReturnType<typeof append>) => (await sending).entries.map((one) => one.became)
const kept = async () => (await loadLog(shoot, 0)).map(({ document }) => document)

describe('the slate log', () => {
  it("keeps what was sent in the order it came in, with the time of receipt and the sender's clock", async () => {
    const [a, b] = entries(2)
    const { received, entries: answers } = await append(b, a)
    expect(answers).toEqual([
      { id: b?.id, became: 'kept', position: 1 },
      { id: a?.id, became: 'kept', position: 2 },
    ])
    expect(await loadLog(shoot, 0)).toEqual([
      { position: 1, received, sent: SENT, document: b },
      { position: 2, received, sent: SENT, document: a },
    ])
    expect(await loadLog(shoot, 1)).toHaveLength(1)
    await append(mark(3, 'meat-on').document)
    expect((await loadKinds(shoot, ['mark', 'take'])).map(({ position }) => position)).toEqual([3])
  })
  it('keeps an entry once however often it is sent, in one sending or in several at once', async () => {
    const [a, b] = entries(2)
    expect(await became(append(a, a, b))).toEqual(['kept', 'kept', 'kept'])
    await Promise.all([append(a), append(a, b), append(b)])
    expect(await became(append(b, a))).toEqual(['known', 'known'])
    expect(await kept()).toEqual([a, b])
  })
  it('refuses another content under a kept id, and each faulty entry by itself at its place', async () => {
    const [a, b] = entries(2)
    await append(a)
    const { entries: answers } = await append({ ...a, temp: '99 °C' }, b, { ...b, id: undefined, temp: 20 })
    expect(answers.map((one) => one.became)).toEqual(['refused', 'kept', 'refused'])
    expect(answers[0]).toMatchObject({ problems: [{ pointer: '/entries/0/id' }] })
    expect(answers[2]).toMatchObject({
      id: null,
      problems: [{ pointer: '/entries/2/id' }, { pointer: '/entries/2/temp' }],
    })
    expect(await kept()).toEqual([a, b])
  })
  it('of a shoot that is not there takes nothing', async () => {
    await expect(appendLog('nowhere', SENT, entries(1))).rejects.toMatchObject({ code: 'not-found' })
  })
  it('tells those who listen, once each, until they stop', async () => {
    const heard: number[] = []
    const stop = await listen(shoot, (lines) => heard.push(...lines.map(({ position }) => position)))
    const [a, b, c] = entries(3)
    await append(a, b)
    await append(a)
    await vi.waitFor(() => expect(heard).toEqual([1, 2]))
    stop()
    await append(c)
    expect(heard).toEqual([1, 2])
    expect(listenerCount(shoot)).toBe(0)
  })
})
