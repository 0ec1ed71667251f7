import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { blobsIn, putBlob, readBlob, removeBlobs, removeOlderBlobs, sizeOfBlobs } from '../../lib/data/blobs'
import { appendLines, filesIn, lastLines, readLines, replaceLines } from '../../lib/data/line-file'
import { SmallFile } from '../../lib/data/small-file'
import { closeAll, freshPlace } from './real-database'

beforeEach(freshPlace)
afterEach(closeAll)

/** As another process: what this one remembers of small files is forgotten. */
const forget = () => Object.assign(globalThis, { emberslateDoor: undefined, emberslateSmallFiles: undefined })

describe('a small file', () => {
  const counts = (name = 'door/count.json') => new SmallFile(name, z.object({ n: z.number() }), { n: 0 })
  const add = (file: SmallFile<{ n: number }>) => file.change(({ n }) => ({ n: n + 1 }))

  it('is what it was made with until it is changed, and what it was changed to for everybody then', async () => {
    const file = counts()
    expect(await file.read()).toEqual({ n: 0 })
    await Promise.all(Array.from({ length: 20 }, () => add(file)))
    expect([await file.read(), await counts().read()]).toEqual([{ n: 20 }, { n: 20 }])
    forget()
    expect(await file.read()).toEqual({ n: 20 })
    // Nothing is read again where nothing has changed.
    expect(await file.read()).toBe(await file.read())
  })
  it('stays as it was where a change is refused, and may hold nothing', async () => {
    const file = counts()
    await add(file)
    const refuse = () => {
      throw new Error('No.')
    }
    await expect(file.change(refuse)).rejects.toThrow('No.')
    expect([await add(file), await file.change((now) => now)]).toEqual([{ n: 2 }, { n: 2 }])
    const owner = new SmallFile('door/one.json', z.string().nullable(), null)
    expect([await owner.read(), await owner.change(() => 'a'), await owner.change(() => null)]).toEqual([
      null,
      'a',
      null,
    ])
    forget()
    expect([await file.read(), await owner.read()]).toEqual([{ n: 2 }, null])
  })
  it('that does not read is told, and never taken for empty', async () => {
    await add(counts())
    forget()
    await expect(new SmallFile('door/count.json', z.object({ m: z.string() }), { m: '' }).read()).rejects.toThrow(
      /count\.json.* does not read/,
    )
  })
})

describe('a file of lines', () => {
  it('grows by whole groups in the order in which they were told, whoever adds them', async () => {
    await appendLines('cookers/a', ['1', '2'])
    await Promise.all(Array.from({ length: 12 }, (_, i) => appendLines('cookers/a', [`${i}x`, `${i}y`])))
    const lines = await readLines('cookers/a')
    expect(lines.slice(0, 2)).toEqual(['1', '2'])
    expect(lines).toHaveLength(26)
    for (let i = 2; i < lines.length; i += 2) expect(lines[i + 1]).toBe(lines[i]?.replace('x', 'y'))
    expect(await lastLines('cookers/a', 3)).toEqual(lines.slice(-3))
  })
  it('is put in place of another, found in its folder, and empty where there is none', async () => {
    await appendLines('forecasts/a', ['1', '2'])
    await replaceLines('forecasts/a', ['é “3”'])
    await appendLines('forecasts/a', ['4'])
    await appendLines('cookers/b', ['5'])
    await appendLines('cookers/nothing', [])
    expect([await readLines('forecasts/a'), await readLines('forecasts/none')]).toEqual([['é “3”', '4'], []])
    expect([await filesIn('cookers'), await filesIn('none')]).toEqual([['cookers/b'], []])
  })
})

describe('a file that never changes', () => {
  const bytes = (first: number, size = 1000) => Uint8Array.from({ length: size }, (_, i) => (first + i) % 256)
  it('is kept once under its name, whole, and counted in its folder', async () => {
    const put = () => putBlob('photos/s', 'a.jpg', bytes(0))
    const became = await Promise.all([put(), put()])
    expect(became).toContain('kept')
    expect(await put()).toBe('known')
    await putBlob('photos/s', 'b.jpg', bytes(7, 500))
    await putBlob('photos/t', 'c.jpg', bytes(9))
    expect(new Uint8Array((await readBlob('photos/s', 'a.jpg')) as Buffer)).toEqual(bytes(0))
    expect([await blobsIn('photos/s'), await sizeOfBlobs('photos/s')]).toEqual([['a.jpg', 'b.jpg'], 1500])
    expect([await readBlob('photos/s', 'c.jpg'), await blobsIn('photos/u'), await sizeOfBlobs('photos/u')]).toEqual([
      null,
      [],
      0,
    ])
  })
  it('goes by name, with its folder, or with the folders to which nothing was added lately', async () => {
    for (const name of ['a', 'b', 'c']) await putBlob('incoming/upload', name, bytes(1))
    await removeBlobs('incoming/upload', ['a', 'b'])
    expect(await blobsIn('incoming/upload')).toEqual(['c'])
    await removeOlderBlobs('incoming', Date.now() - 60_000)
    expect(await blobsIn('incoming/upload')).toEqual(['c'])
    await putBlob('photos/s', 'a', bytes(1))
    await removeOlderBlobs('incoming', Date.now() + 60_000)
    expect([await blobsIn('incoming/upload'), await blobsIn('photos/s')]).toEqual([[], ['a']])
    await removeBlobs('photos/s')
    expect(await blobsIn('photos/s')).toEqual([])
  })
})
