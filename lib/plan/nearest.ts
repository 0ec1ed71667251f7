/** Edits (insert, delete, replace, swap of neighbours) that turn one word into the other. */
export function editDistance(a: string, b: string): number {
  const rows = Array.from({ length: a.length + 1 }, (_, i) => [i, ...new Array<number>(b.length).fill(0)])
  const at = (i: number, j: number) => rows[i]?.[j] ?? 0
  for (let j = 0; j <= b.length; j++) (rows[0] as number[])[j] = j
  for (let i = 1; i <= a.length; i++)
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let least = Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + (same ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, at(i - 2, j - 2) + 1)
      ;(rows[i] as number[])[j] = least
    }
  return at(a.length, b.length)
}

/** The known word closest to what was written, or undefined where none is close enough to be meant. */
export function nearest(written: string, known: readonly string[]): string | undefined {
  const word = written.slice(0, 60).toLowerCase()
  let best: string | undefined
  let bestScore = Math.max(2, word.length * 0.45)
  for (const candidate of known) {
    // It takes as many edits at least as one is longer than the other; a file may hold very many wrong words.
    if (Math.abs(word.length - candidate.length) > bestScore) continue
    const score = editDistance(word, candidate.toLowerCase())
    if (score < bestScore || (score === bestScore && best === undefined)) {
      best = candidate
      bestScore = score
    }
  }
  return best
}

/** "a, b or c". */
export function listed(words: readonly string[], joint: 'or' | 'and' = 'or'): string {
  if (words.length <= 1) return words[0] ?? ''
  return `${words.slice(0, -1).join(', ')} ${joint} ${words[words.length - 1]}`
}

/** What was written, short enough to stand in a sentence. */
export function quoted(value: unknown): string {
  if (value === null) return 'null'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'an object'
  const text = String(value)
  const short = text.length > 40 ? `${text.slice(0, 40)}…` : text
  return typeof value === 'string' ? `"${short}"` : short
}
