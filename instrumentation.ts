import type { Instrumentation } from 'next'

/** Opens the database before the first page. Next would answer 500 for ever to a register() that throws, so: a line and out. */
export async function register() {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const { openAtStart } = await import('./lib/data/open-at-start')
  await openAtStart()
  const { takeWork } = await import('./app/take-work')
  await takeWork()
}

/** A page that broke. The start command keeps Next itself quiet about it, for its words may quote anybody. */
export const onRequestError: Instrumentation.onRequestError = async (fault, _request, { routePath, routeType }) => {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const { say, sayFault } = await import('./lib/data/say')
  const digest = (fault as { digest?: unknown }).digest
  // The page says so itself, and nothing broke.
  if (digest === 'database-away') return say('warn', 'not-done', { code: digest, route: routePath })
  sayFault('page-broke', fault, { route: routePath, kind: routeType, digest: String(digest ?? '') })
}
