import { describe, expect, it } from 'vitest'
import { tellsPlace } from '../../../lib/log/photo-place'

const bytesOf = (text: string) => [...text].map((letter) => letter.charCodeAt(0))
/** A TIFF with one directory of these tags, as Exif has it. */
function exif(order: 'II' | 'MM', ...tags: number[]): number[] {
  const two = (n: number) => (order === 'II' ? [n & 255, n >> 8] : [n >> 8, n & 255])
  const four = (n: number) =>
    order === 'II' ? [...two(n & 0xffff), ...two(n >> 16)] : [...two(n >> 16), ...two(n & 0xffff)]
  return [
    ...bytesOf(order),
    ...two(42),
    ...four(8),
    ...two(tags.length),
    ...tags.flatMap((tag) => [...two(tag), ...two(4), ...four(1), ...four(0)]),
  ]
}
const segment = (marker: number, body: number[]) => [
  0xff,
  marker,
  (body.length + 2) >> 8,
  (body.length + 2) & 255,
  ...body,
]
const jpeg = (...segments: number[][]) =>
  Uint8Array.from([0xff, 0xd8, ...segments.flat(), 0xff, 0xda, 0, 2, 1, 2, 0xff, 0xd9])
const chunk = (name: string, body: number[]) => [
  ...bytesOf(name),
  body.length,
  0,
  0,
  0,
  ...body,
  ...(body.length % 2 ? [0] : []),
]
const webp = (...chunks: number[][]) =>
  Uint8Array.from([...bytesOf('RIFF'), 0, 0, 0, 0, ...bytesOf('WEBP'), ...chunks.flat()])
const EXIF = bytesOf('Exif\0\0')
const JFIF = segment(0xe0, bytesOf('JFIF\0'))

describe('a photograph', () => {
  it.each([
    ['Exif of either order', jpeg(JFIF, segment(0xe1, [...EXIF, ...exif('II', 0x112, 0x8825)]))],
    ['Exif of the other', jpeg(segment(0xe1, [...EXIF, ...exif('MM', 0x8825)]))],
    ['XMP', jpeg(segment(0xe1, bytesOf('http://ns.adobe.com/xap/1.0/\0<x exif:GPSLatitude="53,20N"/>')))],
    ['Exif in WebP', webp(chunk('VP8X', [1]), chunk('EXIF', exif('II', 0x8825)))],
  ])('says where it was taken by %s', (_, bytes) => expect(tellsPlace(bytes)).toBe(true))

  it.each([
    ['that a browser drew', jpeg(JFIF)],
    ['with its size and upright alone', jpeg(segment(0xe1, [...EXIF, ...exif('MM', 0x112, 0xa002)]))],
    ['in WebP without', webp(chunk('VP8 ', [1, 2, 3]))],
    ['cut off in its Exif', jpeg(segment(0xe1, [...EXIF, ...exif('II', 0x8825)])).subarray(0, 17)],
    ['of three bytes', Uint8Array.of(0xff, 0xd8, 0xff)],
  ])('%s does not', (_, bytes) => expect(tellsPlace(bytes)).toBe(false))
})
