import { describe, expect, it } from 'vitest'
import type { DeviceClock } from '../../../app/set/feed/device-clock'
import { type PhotoAnswer, PhotoQueue } from '../../../app/set/photos/photo-queue'
import { MemoryPhotos } from '../../../app/set/photos/photo-store'

/** Waits end when the test says so. */
const STILL: DeviceClock = { own: () => 0, after: () => () => {} }
const picture = (last: number) => ({ name: `${last}.jpg`, bytes: Uint8Array.of(0xff, 0xd8, 0xff, last) })
const settled = () => new Promise((resolve) => setTimeout(resolve, 0))

describe('photographs on a phone', () => {
  it('are kept before they are named, outlive a reload, go out when the server is there, and one refused holds none back', async () => {
    const store = new MemoryPhotos()
    const said: PhotoAnswer[] = ['not-now']
    const sent: string[] = []
    const open = () =>
      new PhotoQueue(
        Promise.resolve(store),
        async ({ name }) => {
          sent.push(name)
          return said.shift() ?? 'not-now'
        },
        STILL,
      )
    const first = open()
    await first.start()
    const name = await first.add(picture(1))
    await settled()
    expect([store.kept.has(name), sent, [...first.waiting().keys()]]).toEqual([true, [name], [name]])
    first.stop()

    const again = open()
    await again.start()
    await settled()
    expect([...again.waiting().keys()]).toEqual([name])
    said.push('refused', 'kept')
    const second = await again.add(picture(2))
    await settled()
    again.hurry()
    await settled()
    expect([...again.waiting().values()]).toMatchObject([{ name, refused: true }])
    expect([sent.at(-2), sent.at(-1), store.kept.has(second)]).toEqual([name, second, false])
  })
})
