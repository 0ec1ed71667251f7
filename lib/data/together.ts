/**
 * One question for all who ask at the same time. Who asks while one is under way waits for the next, which is put
 * afterwards: nobody is answered with what was so before they asked.
 */
export class Together<T> {
  readonly #ask: () => Promise<T>
  #before: Promise<unknown> = Promise.resolve()
  #next: Promise<T> | null = null

  constructor(ask: () => Promise<T>) {
    this.#ask = ask
  }
  ask(): Promise<T> {
    if (this.#next) return this.#next
    const next = this.#before.then(() => {
      this.#next = null
      return this.#ask()
    })
    this.#next = next
    this.#before = next.catch(() => undefined)
    return next
  }
}
