import { inflateSync } from 'node:zlib'

/** The text of a PDF in the order in which it is drawn, read through its fonts' ToUnicode tables as a reader's search does. */
export function textIn(bytes: Uint8Array): string {
  const file = Buffer.from(bytes).toString('latin1')
  const objects = new Map([...file.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map((m) => [m[1], m[2] ?? '']))
  const held = (id: string | undefined) => objects.get(id ?? '') ?? ''
  const tables = new Map<string, Map<string, string>>()
  for (const [, name = '', id] of file.matchAll(/\/(F\d+) (\d+) 0 R/g))
    tables.set(name, tables.get(name) ?? unicodeOf(streamOf(held(/\/ToUnicode (\d+) 0 R/.exec(held(id))?.[1]))))
  return [...file.matchAll(/\/Contents (\d+) 0 R/g)].map(([, id]) => drawn(streamOf(held(id)), tables)).join('\n')
}

function streamOf(object: string): string {
  const [, packed] = /stream\r?\n([\s\S]*?)\r?\nendstream/.exec(object) ?? []
  const bytes = Buffer.from(packed ?? '', 'latin1')
  return object.includes('/FlateDecode') ? inflateSync(bytes).toString('latin1') : bytes.toString('latin1')
}

const letters = (hex: string) => Buffer.from(hex, 'hex').swap16().toString('utf16le')
/** Glyph to letters: the printer writes one range from 0 with a list, or several. */
function unicodeOf(table: string): Map<string, string> {
  const map = new Map<string, string>()
  for (const [, from = '0', list = ''] of table.matchAll(/<([0-9a-f]{4})> <[0-9a-f]{4}> \[([^\]]*)\]/gi))
    [...list.matchAll(/<([0-9a-f ]*)>/gi)].forEach(([, hex = ''], i) => {
      const glyph = (Number.parseInt(from, 16) + i).toString(16).padStart(4, '0')
      map.set(glyph, letters(hex.replaceAll(' ', '')))
    })
  return map
}

function drawn(content: string, tables: ReadonlyMap<string, ReadonlyMap<string, string>>): string {
  let table: ReadonlyMap<string, string> = new Map()
  let text = ''
  for (const [, font, shown] of content.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
    if (font) table = tables.get(font) ?? new Map()
    for (const [, hex = ''] of (shown ?? '').matchAll(/<([0-9a-f]*)>/gi))
      text += (hex.match(/.{4}/g) ?? []).map((glyph) => table.get(glyph.toLowerCase()) ?? '?').join('')
    if (shown !== undefined) text += '\n'
  }
  return text
}
