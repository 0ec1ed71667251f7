/** A word, number or sign of a sentence, lower case, with its place in the text as written. */
export interface Token {
  readonly text: string
  readonly start: number
  readonly end: number
}

const TOKEN = /\d+(?:[.,]\d+)?|[½¼¾⅓⅔⅛⅜⅝⅞]|\p{L}+|\S/gu

export const tokensOf = (sentence: string): Token[] =>
  [...sentence.matchAll(TOKEN)].map((m) => ({
    text: m[0].toLowerCase(),
    start: m.index,
    end: m.index + m[0].length,
  }))

/** The sentences of a step: cut after . ! ? that end a word, never inside a number or after "min." and the like. */
export function sentencesOf(text: string): string[] {
  const cut = text.replace(/([\p{L}\d)%°”"])([.!?])\s+(?=[\p{Lu}\d“"])/gu, (whole, before, mark, at: number) =>
    /\b(?:approx|ca|no)$/iu.test(text.slice(0, at + 1)) ? whole : `${before}${mark}\u0000`,
  )
  return cut
    .split('\u0000')
    .map((s) => s.trim())
    .filter(Boolean)
}
