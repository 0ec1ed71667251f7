import net from 'node:net'
import { broken, type Finding, look, ok } from './finding'

const ANSWER_MS = 3000
interface Check {
  readonly name: string
  readonly ok: boolean
  readonly sentence?: string
}

/** The app at this port, if it is ours: what it says of itself. */
export async function appAt(port: number): Promise<readonly Check[] | undefined> {
  try {
    const answer = await fetch(`http://127.0.0.1:${port}/readyz`, { signal: AbortSignal.timeout(ANSWER_MS) })
    const { checks } = (await answer.json()) as { checks?: unknown }
    return Array.isArray(checks) ? (checks as Check[]) : undefined
  } catch {
    return undefined
  }
}

export const appFindings = (checks: readonly Check[]): readonly Finding[] => {
  const amiss = checks.filter((check) => !check.ok)
  if (amiss.length === 0) return [ok('Running app', 'It is ready.')]
  return amiss.map(({ name, sentence }) =>
    broken(
      'Running app',
      `It is not ready: ${name}.`,
      sentence ?? 'Look at what it wrote, or ask /readyz at that computer.',
    ),
  )
}

const isFree = (port: number) =>
  new Promise<boolean>((resolve) => {
    const server = net.createServer()
    server.once('error', () => resolve(false))
    server.listen({ port }, () => server.close(() => resolve(true)))
  })

/** Both lines: the plain one, and the one that phones trust. */
export async function portFindings(port: number, ours: boolean): Promise<readonly Finding[]> {
  const trusted = port + 443
  const again = `Stop the program that has it, or choose another: PORT=${port + 1} npm start`
  const [plainFree, trustedFree] = [await isFree(port), await isFree(trusted)]
  const plain = ours
    ? ok('Port', `${port} is Emberslate’s.`)
    : plainFree
      ? ok('Port', `${port} is free.`)
      : broken('Port', `${port} is taken by another program.`, again)
  if (trustedFree) return [plain, ok('Trusted port', `${trusted} is free, for --crew.`)]
  if (ours) return [plain, ok('Trusted port', `${trusted} is taken, by this Emberslate where it runs with --crew.`)]
  return [plain, look('Trusted port', `${trusted} is taken by another program.`, `Only --crew needs it. ${again}`)]
}

/** Who has the folder open, against what answers at the port. */
export function holderFinding(holder: string | undefined, port: number, answers: boolean): Finding {
  if (holder === undefined && answers)
    return look(
      'Folder’s lock',
      `The Emberslate at ${port} has another folder open, or is of an older version.`,
      'Ask with the EMBERSLATE_DATA that it was started with.',
    )
  if (holder === undefined) return ok('Folder’s lock', 'No Emberslate has this folder open.')
  if (answers) return ok('Folder’s lock', `Process ${holder} has this folder open.`)
  return look(
    'Folder’s lock',
    `Process ${holder} has this folder open, and nothing of Emberslate answers at ${port}.`,
    `If it has another port: PORT=… npm run doctor. If it hangs, stop it (kill ${holder}) and npm start.`,
  )
}
