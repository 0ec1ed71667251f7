/** What a command says to the person at the terminal, and the exit code that goes with it. */
export function say(words: string): number {
  process.stdout.write(`${words}\n`)
  return 0
}
export function refuse(words: string): number {
  process.stderr.write(`${words}\n`)
  return 1
}
