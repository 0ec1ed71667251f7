/** So many of the sentences that a merge brought stay on the screen. */
const MOST = 12
export const entriesWord = (n: number) => (n === 1 ? '1 entry' : `${n} entries`)

/** What a merge brought, newest first: what the fold tells now that it did not tell before. */
export class Merged {
  #known: ReadonlySet<string> = new Set()
  #sentences: readonly string[] = []
  #cut: { sent: number; came: number } | null = null

  get sentences(): readonly string[] {
    return this.#sentences
  }

  /** What is told when the screen opens is no news. */
  opened(told: readonly string[]): void {
    this.#known = new Set(told)
  }
  heard(told: readonly string[]): void {
    const news = told.filter((sentence) => !this.#known.has(sentence))
    if (news.length === 0) return
    this.#known = new Set([...this.#known, ...news])
    this.#say(news)
  }

  cutOff(): void {
    this.#cut ??= { sent: 0, came: 0 }
  }
  count(what: 'sent' | 'came', lines: number): void {
    if (this.#cut) this.#cut[what] += lines
  }
  /** Connected, and everything is through. */
  back(): void {
    const cut = this.#cut
    this.#cut = null
    if (!cut || cut.sent + cut.came === 0) return
    this.#say([
      `Back in touch: ${entriesWord(cut.sent)} of this device went out, ${entriesWord(cut.came)} of others came in.`,
    ])
  }

  #say(news: readonly string[]): void {
    this.#sentences = [...news, ...this.#sentences].slice(0, MOST)
  }
}
