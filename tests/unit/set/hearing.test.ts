import { describe, expect, it } from 'vitest'
import { eventReader, type Heard } from '../../../app/set/feed/event-lines'
import { missingWords } from '../../../app/set/feed/missing'
import { ServerClock } from '../../../app/set/feed/server-clock'

describe('a stream of events', () => {
  it('reads the same however it is cut into pieces', () => {
    const stream = 'retry: 1000\n\nid: 7\nevent: entry\ndata: {"a":\ndata: 1}\n\n: at 7\n\r\nevent: day\ndata:{}\n\n'
    for (let size = 1; size <= stream.length; size++) {
      const [heard, comments]: [Heard[], string[]] = [[], []]
      const read = eventReader(
        (one) => heard.push(one),
        (text) => comments.push(text),
      )
      for (let i = 0; i < stream.length; i += size) read(stream.slice(i, i + size))
      expect(heard).toEqual([
        { event: 'entry', id: '7', data: '{"a":\n1}' },
        { event: 'day', id: null, data: '{}' },
      ])
      expect(comments).toEqual(['at 7'])
    }
  })
})

describe('the time of the server', () => {
  it('is known to half of what the quickest answer took, and follows a clock that was set', () => {
    let own = 1_000_000
    const clock = new ServerClock(() => own)
    const hear = (tookMs: number, aheadMs: number, share: number) => {
      const asked = own
      own += tookMs
      clock.hear(asked, asked + tookMs * share + aheadMs)
    }
    hear(800, 60_000, 0.9)
    expect(Math.abs(clock.now() - own - 60_000)).toBeLessThanOrEqual(400)
    hear(60, 60_000, 1)
    expect(Math.abs(clock.now() - own - 60_000)).toBeLessThanOrEqual(30)
    hear(900, 60_000, 0)
    expect(Math.abs(clock.now() - own - 60_000)).toBeLessThanOrEqual(30)
    hear(300, 5000, 0.5)
    expect(Math.abs(clock.now() - own - 5000)).toBeLessThanOrEqual(150)
  })
})

describe('what a browser lacks', () => {
  it('is said in a sentence with what to do, or not at all', () => {
    const all = { isSecure: true, wakeLock: true, notifications: true, vibration: true }
    expect(missingWords(all)).toBeNull()
    expect(missingWords({ ...all, vibration: false, wakeLock: false })).toBe(
      'This browser cannot keep the screen lit and does not shake. Keep this page open and the screen lit: a locked phone may tell you late.',
    )
    expect(missingWords({ ...all, isSecure: false })).toContain('plain http')
  })
})
