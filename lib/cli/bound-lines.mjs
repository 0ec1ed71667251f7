/** So many lines at once: a crew has hundreds; what is beyond would take the files that the journals need. [estimate] */
const MOST_LINES = 4000
const SAY_MS = 60_000

/** Refuses lines beyond so many, and says so once a minute; those that are open go on. */
export function boundLines(server, most = MOST_LINES, tell = console.error) {
  let toldAt = Number.NEGATIVE_INFINITY
  server.maxConnections = most
  server.on('drop', () => {
    if (performance.now() - toldAt < SAY_MS) return
    toldAt = performance.now()
    tell(`${most} lines are open at once; further ones are refused until some end. A program may be holding them.`)
  })
}
