import { takeJobs } from '../../lib/data/server/jobs-taken'

/** A process that takes a job and never ends it. */
const never = async () => {
  process.stdout.write('took\n')
  return new Promise<never>(() => undefined)
}
await takeJobs({ forecast: never, day: never, print: never })
process.stdout.write('takes\n')
