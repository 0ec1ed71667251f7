/** How a person is told in texts: by their names, by an id that names them, and by their telephone numbers. */
export interface PersonWords {
  /** The words of the longest name. */
  readonly longest: number
  /** Whether these words, one after another, are a name of theirs. */
  isName(words: readonly string[]): boolean
  isPhone(digits: string): boolean
}

/** Where a text tells of them. A name of two words and more, or a number, is `sure`; one word may mean something else. */
export interface Told {
  readonly from: number
  readonly to: number
  readonly sure: boolean
}

export const ERASED = '[erased]'

/** Words by which nobody is known alone. Common practice, no source. */
const PARTICLES = new Set(['al', 'and', 'bin', 'da', 'de', 'del', 'den', 'der', 'di', 'du', 'la', 'le', 'van', 'von'])
const WORD = /[\p{L}\p{N}\p{M}]+/gu
const PHONE = /\+?\d[\d\s()./-]{4,}\d/g
const LEAST_DIGITS = 6
/** Of longer numbers the last so many: with or without the country they are the same. */
const OWN_DIGITS = 8
const LEAST_LETTERS = 2

const bare = (word: string) => word.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()
/** The words of a name, as they are compared: without accents, in small letters. */
export const wordsOf = (text: string): readonly string[] => (text.match(WORD) ?? []).map(bare)

/** As numbers are compared; null where it is none that belongs to one person ("112"). */
export function phoneOf(text: string): string | null {
  const digits = text.replace(/\D/g, '')
  return digits.length < LEAST_DIGITS ? null : digits.slice(-OWN_DIGITS)
}

/** Every name as a whole, and each of its words. */
export function phrasesOf(names: readonly string[]): readonly (readonly string[])[] {
  const whole = names.map(wordsOf).filter((words) => words.length > 0)
  const single = whole.flat().filter((word) => word.length >= LEAST_LETTERS && !PARTICLES.has(word))
  const all = [...whole.filter((words) => words.length > 1), ...single.map((word) => [word])]
  return [...new Map(all.map((words) => [words.join(' '), words])).values()]
}

export function personWords(names: readonly string[], phones: readonly string[]): PersonWords {
  const phrases = phrasesOf(names)
  const known = new Set(phrases.map((words) => words.join(' ')))
  const numbers = new Set(phones.flatMap((phone) => phoneOf(phone) ?? []))
  return {
    longest: Math.max(0, ...phrases.map(({ length }) => length)),
    isName: (words) => known.has(words.join(' ')),
    isPhone: (digits) => numbers.has(digits),
  }
}

/** Whether this is nobody but the person: "Maria" and "Maria Quill, producer" of Maria Quill, not "Maria Stone". */
export function isCalled(text: string, names: readonly string[]): boolean {
  const said = wordsOf(text)
  if (said.length === 0) return false
  return names.map(wordsOf).some((name) => {
    const own =
      name.length > 0 && said.every((word) => name.includes(word)) && said.some((word) => !PARTICLES.has(word))
    const whole = name.length > 1 && ` ${said.join(' ')} `.includes(` ${name.join(' ')} `)
    return own || whole
  })
}

/** Every place where a text tells of the person, the longest name first, none over another. */
export function toldIn(text: string, words: PersonWords): readonly Told[] {
  const tokens = [...text.matchAll(WORD)].map((match) => ({
    word: bare(match[0]),
    from: match.index,
    to: match.index + match[0].length,
  }))
  const found: Told[] = []
  for (let i = 0; i < tokens.length; ) {
    const length = nameAt(tokens, i, words)
    const [first, last] = [tokens[i], tokens[i + length - 1]]
    if (length > 0 && first && last) found.push({ from: first.from, to: last.to, sure: length > 1 })
    i += Math.max(1, length)
  }
  for (const match of text.matchAll(PHONE)) {
    const phone = phoneOf(match[0])
    if (phone !== null && words.isPhone(phone))
      found.push({ from: match.index, to: match.index + match[0].length, sure: true })
  }
  return found.sort((a, b) => a.from - b.from)
}

function nameAt(tokens: readonly { readonly word: string }[], at: number, words: PersonWords): number {
  for (let length = Math.min(words.longest, tokens.length - at); length > 0; length--)
    if (words.isName(tokens.slice(at, at + length).map(({ word }) => word))) return length
  return 0
}

/** The text without those places; one that would get too long is gone as a whole. */
export function blanked(text: string, told: readonly Told[], longest: number): string {
  const without = [...told]
    .reverse()
    .reduce((left, { from, to }) => left.slice(0, from) + ERASED + left.slice(to), text)
  return without.length <= longest ? without : ERASED
}

/** Where clauses end: at a comma only where nothing stronger parts them. */
const STRONG = /[;.\n]/
/** What one person cannot eat stands between others': the whole clause that tells of them goes. */
export function withoutClauses(text: string, words: PersonWords, longest: number): string {
  const parts = text.split(STRONG.test(text) ? /([;.\n])/ : /(,)/)
  const left = parts
    .map((part) => (toldIn(part, words).length > 0 ? part.replace(/\S(.*\S)?/s, ERASED) : part))
    .join('')
  return left.length <= longest ? left : ERASED
}
