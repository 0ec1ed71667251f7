/** Opens the database before the first page. Next would answer 500 for ever to a register() that throws, so: a line and out. */
export async function register() {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const { openAtStart } = await import('./lib/data/open-at-start')
  await openAtStart()
}
