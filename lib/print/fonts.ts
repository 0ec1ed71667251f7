import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { Font } from '@react-pdf/renderer'
import { toTrueType } from './woff'

/** Each face with its extended Latin half after it: a letter the first file lacks is taken from the second. */
export const SERIF = ['Vollkorn', 'Vollkorn ext']
export const SANS = ['Sofia Sans Semi Condensed', 'Sofia Sans Semi Condensed ext']
export const CONDENSED = ['Sofia Sans Condensed', 'Sofia Sans Condensed ext']
/** Lining and tabular: Vollkorn's own figures are old-style and of all widths. */
export const FIGURES = { lnum: 1, tnum: 1 }

type Style = 'normal' | 'italic'
interface FacePackage {
  readonly family: string
  readonly package: string
  readonly cuts: readonly (readonly [number, Style])[]
}
const FACES: readonly FacePackage[] = [
  {
    family: 'Vollkorn',
    package: 'vollkorn',
    cuts: [
      [400, 'normal'],
      [400, 'italic'],
      [600, 'normal'],
    ],
  },
  {
    family: 'Sofia Sans Semi Condensed',
    package: 'sofia-sans-semi-condensed',
    cuts: [
      [400, 'normal'],
      [500, 'normal'],
      [700, 'normal'],
    ],
  },
  {
    family: 'Sofia Sans Condensed',
    package: 'sofia-sans-condensed',
    cuts: [
      [400, 'normal'],
      [500, 'normal'],
      [700, 'normal'],
      [800, 'normal'],
    ],
  },
]

/** Where an installed font package lies. Not `import.meta.resolve`: a bundler would rewrite it. */
function folderOf(name: string): string {
  const found = createRequire(path.join(process.cwd(), 'package.json')).resolve(`@fontsource/${name}/package.json`)
  return path.join(path.dirname(found), 'files')
}

const unpacked = (file: string) => `data:font/ttf;base64,${toTrueType(readFileSync(file)).toString('base64')}`

let registered = false
/** Registers the three faces with the printer, once. Words are never broken. */
export function registerFonts(): void {
  if (registered) return
  registered = true
  for (const face of FACES) {
    const folder = folderOf(face.package)
    for (const [subset, family] of [
      ['latin', face.family],
      ['latin-ext', `${face.family} ext`],
    ] as const)
      Font.register({
        family,
        fonts: face.cuts.map(([fontWeight, fontStyle]) => ({
          src: unpacked(path.join(folder, `${face.package}-${subset}-${fontWeight}-${fontStyle}.woff`)),
          fontWeight,
          fontStyle,
        })),
      })
  }
  Font.registerHyphenationCallback((word) => [word])
}
