/** A PostgreSQL for as long as whoever started this holds our input: says its address in one line, or why there is none. */
import { startPostgres } from './postgres'

try {
  const server = await startPostgres({ synced: false })
  console.log(server.url)
  process.stdin.resume().once('end', async () => {
    await server.stop()
    process.exit(0)
  })
} catch (fault) {
  console.error(fault instanceof Error ? fault.message : fault)
  process.exit(1)
}
