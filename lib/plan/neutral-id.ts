import { wordsOf } from './person-words'

/** What an id may say that tells of nobody: a place in the crew. Common practice, no source. */
const NOBODYS = new Set(['crew', 'person', 'guest', 'extra', 'member', 'hand'])
const LEAST_SHARED = 3

/** Whether an id names a job ("cam-1", the camera's) and not the person: of what we are not sure we say no. */
export function isNeutral(id: string, roles: readonly string[], names: readonly string[]): boolean {
  const jobs = roles.flatMap(wordsOf)
  const own = names.flatMap(wordsOf)
  return wordsOf(id).every((word) => {
    const startsOneOf = (words: readonly string[]) =>
      words.some((one) => one === word || (word.length >= LEAST_SHARED && one.startsWith(word)))
    return /^\d+$/.test(word) || (!startsOneOf(own) && (NOBODYS.has(word) || startsOneOf(jobs)))
  })
}

/** The first "crew-N" that nothing is called. */
export function freeId(taken: ReadonlySet<string>): string {
  for (let n = 1; ; n++) if (!taken.has(`crew-${n}`)) return `crew-${n}`
}
