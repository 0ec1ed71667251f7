import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { GET } from '../../app/api/shoots/[id]/photos/[name]/route'
import { POST } from '../../app/api/shoots/[id]/photos/route'
import { blobsIn, removeBlobs } from '../../lib/data/blobs'
import { createShoot } from '../../lib/data/create-shoot'
import { keepPhoto } from '../../lib/data/photos'
import { closeAll, freshDatabase } from './real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
let shoot = ''
beforeEach(async () => {
  await freshDatabase()
  const made = await createShoot(DOCUMENT, 'write-000001')
  shoot = made.ok ? made.value.id : ''
})
afterEach(closeAll)

const picture = (head: readonly number[], size = 5000) =>
  Uint8Array.from({ length: size }, (_, i) => head[i] ?? (i * 31) % 251)
const JPEG = picture([0xff, 0xd8, 0xff, 0xe0])
const EXIF = [...Buffer.from('Exif\0\0II*\0'), 8, 0, 0, 0, 1, 0, 0x25, 0x88, 4, 0, 1, 0, 0, 0, 0, 0, 0, 0]
const PLACED = picture([0xff, 0xd8, 0xff, 0xe1, 0, EXIF.length + 2, ...EXIF])
const WEBP = picture([...Buffer.from('RIFF'), 1, 2, 3, 4, ...Buffer.from('WEBP')])
const nameOf = (bytes: Uint8Array, ending: string) => `${createHash('sha256').update(bytes).digest('hex')}.${ending}`
const post = (body: Uint8Array<ArrayBuffer>, id = shoot) =>
  POST(new Request('http://127.0.0.1/', { method: 'POST', body }), { params: Promise.resolve({ id }) })
const get = (name: string, id = shoot) =>
  GET(new Request('http://127.0.0.1/'), { params: Promise.resolve({ id, name }) })
const kept = () => blobsIn(`photos/${shoot}`)

describe('a photograph of the set', () => {
  it('is kept under the name of its content, once however often it comes, and comes back whole', async () => {
    const both = await Promise.all([post(JPEG), post(JPEG)])
    const again = await post(JPEG)
    expect([both[0].status, again.status, (await again.json()).became]).toEqual([201, 200, 'known'])
    expect(await (await post(WEBP)).json()).toEqual({ name: nameOf(WEBP, 'webp'), became: 'kept' })
    expect(await kept()).toEqual([nameOf(JPEG, 'jpg'), nameOf(WEBP, 'webp')].sort())
    const got = await get(nameOf(JPEG, 'jpg'))
    expect(new Uint8Array(await got.arrayBuffer())).toEqual(JPEG)
    const header = (name: string) => got.headers.get(name)
    expect([header('content-type'), header('x-content-type-options')]).toEqual(['image/jpeg', 'nosniff'])
    expect(header('cache-control')).toContain('immutable')
  })
  it('is refused where it is none by its bytes, says where it was taken, is too large, of no shoot here, or asked for by a path', async () => {
    const page = new TextEncoder().encode('<script>1</script>') as Uint8Array<ArrayBuffer>
    const answers = [
      await post(page),
      await post(PLACED),
      await post(picture([0xff, 0xd8, 0xff], 1_500_001)),
      await post(JPEG, 'none-such'),
      await get(`../../owner.json`),
      await get(nameOf(page, 'jpg')),
    ]
    expect(answers.map(({ status }) => status)).toEqual([415, 415, 413, 404, 404, 404])
    expect((await (answers[2] as Response).json()).detail).toContain('1.5 MB')
    expect([await kept(), await blobsIn('photos/none-such')]).toEqual([[], []])
  })
  it('is refused with a sentence where its shoot is full, until somebody makes room', async () => {
    const most = JPEG.length + 100
    expect((await keepPhoto(shoot, JPEG, most)).became).toBe('kept')
    await expect(keepPhoto(shoot, WEBP, most)).rejects.toMatchObject({ code: 'photos-full', status: 413 })
    expect((await keepPhoto(shoot, JPEG, most)).became).toBe('known')
    await removeBlobs(`photos/${shoot}`, [nameOf(JPEG, 'jpg')])
    expect((await keepPhoto(shoot, WEBP, most)).became).toBe('kept')
  })
})
