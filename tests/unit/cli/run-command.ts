import { vi } from 'vitest'
import { cardCommand } from '../../../lib/cli/card'
import { checkCommand } from '../../../lib/cli/check'
import { forecastCommand } from '../../../lib/cli/forecast'
import { layoutCommand } from '../../../lib/cli/layout'

const COMMANDS = { forecast: forecastCommand, layout: layoutCommand, check: checkCommand, card: cardCommand }
export type CommandName = keyof typeof COMMANDS

export interface Ran {
  readonly code: number
  readonly out: string
  readonly problems: readonly string[]
}

/** A command in this process, which has the model loaded already; what it prints is kept. */
export async function runCommand(name: CommandName, ...args: string[]): Promise<Ran> {
  const said = { out: '', err: '' }
  const keep = (key: keyof typeof said) => (text: string | Uint8Array) => {
    said[key] += text
    return true
  }
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation(keep('out')),
    vi.spyOn(process.stderr, 'write').mockImplementation(keep('err')),
  ]
  const before = process.exitCode
  process.exitCode = undefined
  try {
    await COMMANDS[name](args)
    return { code: Number(process.exitCode ?? 0), out: said.out, problems: said.err.split('\n').filter(Boolean) }
  } finally {
    process.exitCode = before
    for (const spy of spies) spy.mockRestore()
  }
}
