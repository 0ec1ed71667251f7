/** Reads JSON for its grammar alone, to say in words where it breaks; JSON.parse tells differently on every engine. */

class Broken extends Error {
  constructor(
    readonly at: number,
    readonly expected: string,
  ) {
    super(expected)
  }
}

type Cursor = { readonly text: string; at: number }
const DEEPEST = 200
const NUMBER = /-?(0|[1-9]\d*)(\.\d+)?([eE][-+]?\d+)?/y
/** A string up to, and without, its closing quotation mark. JSON allows no control characters in it. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that JSON forbids
const OPEN_STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*/y

/** One sentence with line, column and what was expected, or null where the text is JSON. */
export function jsonFault(text: string): string | null {
  const cursor: Cursor = { text, at: 0 }
  try {
    readValue(cursor, 0, 'a shoot file, which begins with {')
    skipSpace(cursor)
    if (cursor.at < text.length) throw new Broken(cursor.at, 'the end of the file')
    return null
  } catch (fault) {
    if (fault instanceof Broken) return tell(text, fault)
    throw fault
  }
}

function tell(text: string, fault: Broken): string {
  const before = text.slice(0, fault.at)
  const line = before.split('\n').length
  const column = fault.at - before.lastIndexOf('\n')
  const found = fault.at >= text.length ? 'the file ends' : `there is ${shown(text, fault.at)}`
  return `The file is not JSON: in line ${line}, column ${column}, ${found}. Expected is ${fault.expected}.`
}
const shown = (text: string, at: number) => {
  const point = text.codePointAt(at) ?? 0
  return point < 0x20 || (point >= 0x7f && point < 0xa0) ? 'a control character' : String.fromCodePoint(point)
}

function skipSpace(cursor: Cursor) {
  while (' \t\n\r'.includes(cursor.text[cursor.at] ?? 'x')) cursor.at++
}
function take(cursor: Cursor, pattern: RegExp): string | null {
  pattern.lastIndex = cursor.at
  const found = pattern.exec(cursor.text)?.[0]
  if (found === undefined) return null
  cursor.at += found.length
  return found
}

function readValue(cursor: Cursor, depth: number, expected: string) {
  skipSpace(cursor)
  if (depth > DEEPEST) throw new Broken(cursor.at, `nesting of at most ${DEEPEST}`)
  const next = cursor.text[cursor.at]
  if (next === '{') return readMembers(cursor, depth)
  if (next === '[') return readItems(cursor, depth)
  if (next === '"') return readString(cursor, 'a text in quotation marks')
  if (take(cursor, /true|false|null/y) === null && take(cursor, NUMBER) === null) throw new Broken(cursor.at, expected)
}

function readString(cursor: Cursor, expected: string): string {
  const start = cursor.at
  if (cursor.text[start] !== '"') throw new Broken(start, expected)
  const found = take(cursor, OPEN_STRING)
  if (found !== null && take(cursor, /"/y)) return found
  const rule =
    cursor.text[cursor.at] === '\\' ? 'one of \\" \\\\ \\/ \\b \\f \\n \\r \\t \\u0000' : 'the closing quotation mark'
  throw new Broken(cursor.at, rule)
}

function readMembers(cursor: Cursor, depth: number) {
  const keys = new Set<string>()
  cursor.at++
  skipSpace(cursor)
  if (take(cursor, /\}/y)) return
  for (;;) {
    skipSpace(cursor)
    const start = cursor.at
    const key = readString(
      cursor,
      keys.size === 0 ? 'a key in quotation marks, or }' : 'another key in quotation marks',
    )
    if (keys.has(key)) throw new Broken(start, `another key: ${key}" stands here a second time`)
    keys.add(key)
    skipSpace(cursor)
    if (!take(cursor, /:/y)) throw new Broken(cursor.at, 'a colon after the key')
    readValue(cursor, depth + 1, 'a value')
    skipSpace(cursor)
    if (take(cursor, /\}/y)) return
    if (!take(cursor, /,/y)) throw new Broken(cursor.at, 'a comma or }')
  }
}

function readItems(cursor: Cursor, depth: number) {
  cursor.at++
  skipSpace(cursor)
  if (take(cursor, /\]/y)) return
  for (;;) {
    readValue(cursor, depth + 1, 'a value')
    skipSpace(cursor)
    if (take(cursor, /\]/y)) return
    if (!take(cursor, /,/y)) throw new Broken(cursor.at, 'a comma or ]')
  }
}
