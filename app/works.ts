import 'server-only'
import type { Works } from '@/lib/data/server/jobs-taken'
import { dayThread } from './day-pool'
import { forecastThread } from './forecast-pool'
import { printThread } from './print-pool'

/** By this process's own threads. What is asked was asked by a process of the same build. */
const by =
  (thread: { here(asked: never): Promise<unknown> }) =>
  (asked: unknown): Promise<unknown> =>
    thread.here(asked as never)

export const works: Works = { forecast: by(forecastThread), day: by(dayThread), print: by(printThread) }
