import { fileURLToPath } from 'node:url'

/** Runs a command where its file is what Node was started with, and not where a test calls it. */
export async function asCommand(file: string, command: (args: string[]) => void | Promise<void>): Promise<void> {
  if (process.argv[1] === fileURLToPath(file)) await command(process.argv.slice(2))
}
