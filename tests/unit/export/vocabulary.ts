import { readFileSync } from 'node:fs'

interface Vocabulary {
  readonly subClassOf: Readonly<Record<string, readonly string[]>>
  readonly properties: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>
}
const published = <T>(name: string): T =>
  (JSON.parse(readFileSync(`tests/fixtures/published/${name}.json`, 'utf8')) as { values: T }).values
const { subClassOf, properties } = published<Vocabulary>('schema-org')

interface RichResult {
  readonly type: string
  readonly required?: readonly string[]
  readonly recommended?: readonly string[]
}
export const { richResults, iso8601 } = published<{
  richResults: readonly RichResult[]
  iso8601: readonly { readonly text: string; readonly seconds: number }[]
}>('rich-results')

/** A class with all that it is a kind of. */
const kindsOf = (type: string): string[] => [type, ...(subClassOf[type] ?? []).flatMap(kindsOf)]

const text = (fits: RegExp) => (value: unknown) => typeof value === 'string' && fits.test(value)
/** What a value of schema.org's data types looks like. */
const DATA: Readonly<Record<string, (value: unknown) => boolean>> = {
  Text: text(/\S/),
  URL: (value) => typeof value === 'string' && URL.canParse(value) && /^https?:/.test(value),
  Date: (value) => typeof value === 'string' && new Date(`${value}T00:00Z`).toJSON()?.slice(0, 10) === value,
  Duration: text(/^P(?=\d|T\d)(\d+D)?(T(?=\d)(\d+H)?(\d+M)?(\d+S)?)?$/),
  Number: (value) => typeof value === 'number' && Number.isFinite(value),
  Integer: Number.isInteger,
  Mass: text(/^\d+(\.\d+)? (g|mg|kg)$/),
  Energy: text(/^\d+ (kcal|calories|kJ)$/),
}
type Thing = Readonly<Record<string, unknown>>
const isThing = (value: unknown): value is Thing => typeof value === 'object' && value !== null

function fits(value: unknown, range: string): boolean {
  if (!isThing(value)) return DATA[range]?.(value) ?? false
  return kindsOf(String(value['@type'])).includes(range)
}

/** Everything in a JSON-LD document that schema.org's vocabulary does not know, a line each. */
export function faultsOf(value: unknown, at = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((each, i) => faultsOf(each, `${at}/${i}`))
  if (!isThing(value)) return []
  const type = String(value['@type'])
  if (!(type in properties)) return [`${at}: no class ${type}`]
  const known = Object.assign({}, ...kindsOf(type).map((kind) => properties[kind])) as Record<string, string[]>
  return Object.entries(value).flatMap(([name, held]) => {
    if (name === '@type' || (name === '@context' && at === '' && held === 'https://schema.org')) return []
    const ranges = known[name]
    if (!ranges) return [`${at}/${name}: no property of ${type}`]
    const wrong = [held].flat().filter((each) => !ranges.some((range) => fits(each, range)))
    const why = wrong.map((each) => `${at}/${name}: ${JSON.stringify(each)} is none of ${ranges.join(', ')}`)
    return [...why, ...faultsOf(held, `${at}/${name}`)]
  })
}

/** "nutrition.calories", "contentUrl or embedUrl": whether a thing has what the documentation names. */
function has(thing: Thing, name: string): boolean {
  const reach = (path: string) =>
    path.split('.').reduce<unknown>((held, step) => (isThing(held) ? held[step] : undefined), thing)
  return name.split(' or ').some((path) => reach(path) !== undefined)
}
function thingsIn(value: unknown): Thing[] {
  if (!isThing(value)) return []
  const inside = Object.values(value).flatMap(thingsIn)
  return Array.isArray(value) ? inside : [value, ...inside]
}
/** What the documentation asks of each thing and is not there. */
export const lacking = (document: unknown, which: 'required' | 'recommended'): string[] =>
  thingsIn(document).flatMap((thing) => {
    const asked = richResults.find(({ type }) => type === thing['@type'])?.[which] ?? []
    return asked.filter((name) => !has(thing, name)).map((name) => `${thing['@type']}.${name}`)
  })
