/** `look`: it goes on, and somebody should see to it. `broken`: something does not work, or soon will not. */
export type State = 'ok' | 'look' | 'broken'
export interface Finding {
  readonly about: string
  readonly state: State
  readonly sentence: string
  /** What to do, where there is something to do. */
  readonly todo?: string
}

export const ok = (about: string, sentence: string): Finding => ({ about, state: 'ok', sentence })
export const look = (about: string, sentence: string, todo: string): Finding => ({
  about,
  state: 'look',
  sentence,
  todo,
})
export const broken = (about: string, sentence: string, todo: string): Finding => ({
  about,
  state: 'broken',
  sentence,
  todo,
})

const INDENT = 24
export const lineOf = ({ about, state, sentence, todo }: Finding) =>
  `${state.padEnd(8)}${about.padEnd(INDENT - 8)}${sentence}${todo ? `\n${' '.repeat(INDENT)}${todo}` : ''}`

/** The last line, and what the command ends with: 0 all well, 1 something to look at, 2 something broken. */
export function verdictOf(findings: readonly Finding[]): { readonly words: string; readonly code: 0 | 1 | 2 } {
  const [toLook, down] = (['look', 'broken'] as const).map(
    (state) => findings.filter((one) => one.state === state).length,
  )
  if (down) return { words: `${down} broken, ${toLook} to look at. Begin with what is broken, from the top.`, code: 2 }
  if (toLook) return { words: `Nothing is broken; ${toLook} to look at.`, code: 1 }
  return { words: 'All is well.', code: 0 }
}

const UNITS = ['bytes', 'kB', 'MB', 'GB', 'TB']
export function bytesInWords(bytes: number): string {
  const step = Math.min(UNITS.length - 1, Math.max(0, Math.floor(Math.log10(Math.max(1, bytes)) / 3)))
  const figure = bytes / 1000 ** step
  return `${figure < 10 && step > 2 ? figure.toFixed(1) : Math.round(figure)} ${UNITS[step]}`
}
export function spanInWords(ms: number): string {
  const s = Math.round(Math.abs(ms) / 1000)
  if (s < 120) return `${s} s`
  if (s < 7200) return `${Math.round(s / 60)} min`
  return s < 172_800 ? `${Math.round(s / 3600)} h` : `${Math.round(s / 86_400)} days`
}
export const howMany = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`
