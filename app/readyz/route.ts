import { isKnownHost } from '@/lib/data/door/known-host'
import { isAtThisComputer, visitorOf } from '@/lib/data/door/visitor'
import { type Check, dataChecks } from '@/lib/data/readiness'
import { brokenThreads } from '../broken-threads'

export const dynamic = 'force-dynamic'

const FRESH_MS = 1000
/** Anybody may ask, and as often as they like: the checks are made once a second at most. */
const shared = globalThis as { emberslateReady?: { readonly at: number; readonly checks: Promise<readonly Check[]> } }

function threads(): Check {
  const broken = brokenThreads()
  const sentence = broken.length
    ? `These threads do not run (${broken.join(', ')}): the server does their work, slower. Restart Emberslate.`
    : 'The threads beside the server run, or start when they are asked.'
  return { name: 'threads', ok: broken.length === 0, sentence }
}

function checksNow(): Promise<readonly Check[]> {
  if (!shared.emberslateReady || Date.now() - shared.emberslateReady.at > FRESH_MS) {
    const checks = dataChecks().then((all) => [...all, threads()])
    shared.emberslateReady = { at: Date.now(), checks }
  }
  return shared.emberslateReady.checks
}

/** The sentences are for who runs this computer; what watches from elsewhere learns the names of the checks. */
async function mayKnow({ headers }: Request): Promise<boolean> {
  if (!isKnownHost(headers.get('host') ?? '')) return false
  if (isAtThisComputer(headers)) return true
  // Where the database is away, nobody can be known.
  return visitorOf(headers).then(
    ({ owner }) => owner,
    () => false,
  )
}

/** Whether this process can do its work: 200 or 503, with each check by its name. */
export async function GET(request: Request) {
  const checks = await checksNow()
  const ready = checks.every(({ ok }) => ok)
  const told = (await mayKnow(request)) ? checks : checks.map(({ name, ok }) => ({ name, ok }))
  const headers = { 'cache-control': 'no-store' }
  return Response.json({ ready, checks: told }, { status: ready ? 200 : 503, headers })
}
