import type { Draw } from './draw'

const HUGE = 100_000
const deep = (open: string, close: string, n: number) => open.repeat(n) + close.repeat(n)
const text = (value: string) => JSON.stringify(value)

/** Values as JSON would write them, and as it never may: what a careless or a hostile program sends. */
export const BAD_VALUES: readonly (readonly [string, () => string])[] = [
  ...['null', 'true', '-0', '0', '-1', '1e400', '-1e400', '1e-400', '9007199254740993', '1E+2', '[]', '{}'].map(asIs),
  ...['NaN', 'Infinity', '01', '+1', '.5', '1.', '0x10', 'undefined', "'x'", '"', '"\u0007"', '\\'].map(asIs),
  ...['""', '" "', '"\\u0000"', '"\\ud800"', '"\\udc00\\ud800"', '"\\u202eabc"', '"\\u200b"', '"\\ufeff"'].map(asIs),
  ...['"e\\u0301"', '"\\u2028"', '"\\uffff"', '"\\ud83d\\udd25"', '"\\u0130"', '"ﬁ"', '"\\u001b[2J"'].map(asIs),
  ...['"1e400 kg"', '"NaN °C"', '"-0 °C"', '"−0 min"', '"1e9 °C"', '"٣ kg"', '"1,5 kg"', '"1 kg 1 kg"', '"12"'].map(
    asIs,
  ),
  ...['"2027-02-30"', '"0000-01-01"', '"+275760-09-13"', '"-271821-04-20"', '"9999-12-31"', '"24:00"'].map(asIs),
  ...['"2027-05-15T25:61Z"', '"9999-12-31T23:59:60Z"', '"2027-05-15T12:00:00+99:99"', '"../../etc/localtime"'].map(
    asIs,
  ),
  ...[
    '"../../../etc/passwd"',
    '"..\\\\..\\\\x"',
    '"a\\u0000b"',
    '"<script>1</script>"',
    '"{{7*7}}"',
    '"\' OR 1=1 --"',
  ].map(asIs),
  ...['{"__proto__":{"admin":true}}', '{"constructor":{"prototype":{"x":1}}}', '{"toString":1}', '"__proto__"'].map(
    asIs,
  ),
  ['digits', () => text(`${'9'.repeat(HUGE)} kg`)],
  ['spaces', () => text(`1${' '.repeat(HUGE)}kg`)],
  ['pairs', () => text(`${'1 h '.repeat(HUGE / 4)}x`)],
  ['letters', () => text('x'.repeat(HUGE))],
  ['marks', () => text(`e${'\u0301'.repeat(HUGE)}`)],
  ['list', () => `[${'0,'.repeat(HUGE)}0]`],
  ['deep list', () => deep('[', ']', HUGE)],
  ['deep object', () => `${'{"a":'.repeat(HUGE)}1${'}'.repeat(HUGE)}`],
  ['nested 150', () => deep('[', ']', 150)],
  ['many keys', () => `{${Array.from({ length: 5000 }, (_, i) => `"k${i}":${i}`).join(',')}}`],
]
function asIs(written: string): readonly [string, () => string] {
  return [written, () => written]
}

const MARK = '@@here@@'
type Place = { readonly holder: Record<string, unknown> | unknown[]; readonly key: string }
function placesIn(value: unknown): Place[] {
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => [
    { holder: value as Place['holder'], key },
    ...placesIn(inner),
  ])
}
const put = ({ holder, key }: Place, value: unknown) => {
  ;(holder as Record<string, unknown>)[key] = value
}

/** The JSON text of a value that is wrong in one place, and what is wrong with it. */
export function brokenAt(right: unknown, draw: Draw): { readonly text: string; readonly what: string } {
  const value = structuredClone(right)
  const places = placesIn(value)
  const [name, made] = draw.one(BAD_VALUES)
  if (places.length === 0) return { text: made(), what: name }
  const place = draw.one(places)
  const how = draw.below(10)
  if (how === 0 && !Array.isArray(place.holder)) {
    delete place.holder[place.key]
    return { text: JSON.stringify(value), what: `without ${place.key}` }
  }
  put(place, MARK)
  const marked = JSON.stringify(value)
  const key = JSON.stringify(place.key)
  if (how === 1 && !Array.isArray(place.holder)) {
    const extra = draw.one(['__proto__', 'constructor', 'prototype', 'hasOwnProperty', 'x', '', place.key])
    const was = JSON.stringify(MARK)
    return {
      text: marked.replace(`${key}:${was}`, () => `${key}:1,${JSON.stringify(extra)}:${made()}`),
      what: `${extra} beside ${place.key}`,
    }
  }
  return { text: marked.replace(JSON.stringify(MARK), made), what: `${place.key}: ${name}` }
}
