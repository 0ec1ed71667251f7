import { createRequire } from 'node:module'

interface Tree {
  readonly errors: readonly { readonly message: string; readonly line: number }[]
  readonly cues: readonly { readonly startTime: number; readonly endTime: number; readonly tree: Node }[]
}
interface Node {
  readonly type?: string
  readonly value?: string
  readonly children?: readonly Node[]
}
const require = createRequire(import.meta.url)
const { WebVTTParser } = require('webvtt-parser') as {
  WebVTTParser: new (entities: object) => { parse(file: string, kind: string): Tree }
}
const ENTITIES: object = require('webvtt-parser/html-entities.json')
const textOf = ({ value = '', children = [] }: Node): string => value + children.map(textOf).join('')

/** The cues of a WebVTT file by the W3C's own parser; whatever it complains about is thrown. */
export function cuesOf(file: string, kind: 'chapters' | 'subtitles' = 'subtitles') {
  const { errors, cues } = new WebVTTParser(ENTITIES).parse(file, kind)
  if (errors.length > 0) throw new Error(errors.map(({ line, message }) => `line ${line}: ${message}`).join('\n'))
  return cues.map(({ startTime, endTime, tree }) => ({ startTime, endTime, text: textOf(tree) }))
}
