import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { initWasm, Resvg } from '@resvg/resvg-wasm'
import { toTrueType } from './woff'

/** Not `import.meta.resolve`: a bundler would rewrite it. */
const fileOf = (name: string) => createRequire(path.join(process.cwd(), 'package.json')).resolve(name)
const FACES = [700, 800].map(
  (weight) => `@fontsource/sofia-sans-condensed/files/sofia-sans-condensed-latin-${weight}-normal.woff`,
)

/** Draws SVG pictures as PNG with a clear ground; the same picture gives the same bytes on every machine. */
export type Rasteriser = (svg: string) => Uint8Array

let ready: Promise<Rasteriser> | undefined
/** The drawing machine is set up once in a process. */
export function rasteriser(): Promise<Rasteriser> {
  ready ??= setUp()
  return ready
}

async function setUp(): Promise<Rasteriser> {
  await initWasm(readFileSync(fileOf('@resvg/resvg-wasm/index_bg.wasm')))
  const fontBuffers = FACES.map((face) => new Uint8Array(toTrueType(readFileSync(fileOf(face)))))
  return (svg) => {
    const drawing = new Resvg(svg, { font: { fontBuffers, defaultFontFamily: 'Sofia Sans Condensed' } })
    const picture = drawing.render()
    const bytes = picture.asPng()
    picture.free()
    drawing.free()
    return bytes
  }
}
