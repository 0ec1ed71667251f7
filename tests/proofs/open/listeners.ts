import { hearAll } from '../../../lib/cli/hear-all'
import { startApp } from '../../web/server'

const LISTENERS = 200
/** Ten minutes; this one proof takes longer than the others may. */
const SECONDS = 600
/** What a process that leaks nothing still gains while its heap settles. */
const FLAT_MB = 80

/** Many listeners on one shoot with a reading each second: every event is delivered once, soon, with flat memory. */
export async function prove(): Promise<Record<string, number>> {
  const app = await startApp()
  try {
    const heard = await hearAll(app, LISTENERS, SECONDS)
    const figures = {
      listeners: heard.listeners,
      readings: heard.readings,
      not_delivered: heard.notDelivered,
      doubled: heard.doubled,
      p50_ms: heard.p50Ms,
      p99_ms: heard.p99Ms,
      worst_ms: heard.worstMs,
      memory_start_mb: heard.memoryStartMb,
      memory_end_mb: heard.memoryEndMb,
    }
    const grew = heard.memoryEndMb - heard.memoryStartMb
    if (heard.notDelivered > 0 || heard.doubled > 0 || heard.p99Ms >= 500 || grew > FLAT_MB)
      throw new Error(JSON.stringify(figures, null, 2))
    return figures
  } finally {
    await app.stop()
  }
}
