import 'server-only'
import { databaseUrl, leavesWork } from '@/lib/data/env'

/** Where several processes share a PostgreSQL: works for all of them until the start command tells it to leave. */
export async function takeWork(): Promise<void> {
  if (databaseUrl() === null || leavesWork()) return
  try {
    const { takeJobs } = await import('@/lib/data/server/jobs-taken')
    const { works } = await import('./works')
    Object.assign(globalThis, { emberslateLeave: await takeJobs(works) })
  } catch (fault) {
    console.error(fault instanceof Error ? fault.message.split('\n')[0] : String(fault))
    process.exit(1)
  }
}
