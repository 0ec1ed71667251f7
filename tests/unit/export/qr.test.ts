import jsQR from 'jsqr'
import { describe, expect, it } from 'vitest'
import { newSecret } from '../../../lib/data/door/secret'
import { qrOf } from '../../../lib/export/qr'

/** As a phone's camera has it: so many pixels a module, dark on white, painted from the path alone. */
const PX = 4
function painted({ size, path }: { size: number; path: string }) {
  const side = size * PX
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255)
  for (const [, x, y, width] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let row = Number(y) * PX; row < (Number(y) + 1) * PX; row++) {
      const from = (row * side + Number(x) * PX) * 4
      for (let i = 0; i < Number(width) * PX * 4; i++) if (i % 4 !== 3) pixels[from + i] = 0
    }
  return { pixels, side }
}
const readBack = (text: string) => {
  const { pixels, side } = painted(qrOf(text))
  return jsQR(pixels, side, side)?.data
}

describe('the code of a link', () => {
  it('is read by a decoder that is not ours as the link, to the letter', () => {
    const links = [
      `https://192.168.178.113:3443/join#${newSecret()}`,
      `http://emberslate.local:3000/join#${newSecret()}`,
      'http://10.0.0.7:3000/join',
      'https://example.org/roast/lamb?from=a%20card&v=2',
    ]
    expect(links.map(readBack)).toEqual(links)
  })
})
