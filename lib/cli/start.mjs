/** `npm start`: makes ready whatever is missing, then serves on this computer only, or with `--crew` on the local network too. Plain Node: it runs before npm ci. */
import { createServer } from 'node:http'
import { fileURLToPath } from 'node:url'
import { addressLines, admit, askedFor, openTrustedLine, refuseUpgrades, trustedPort } from './crew-line.mjs'
import { makeReady, Unready } from './make-ready.mjs'

const HOST = '127.0.0.1'
const SHUTDOWN_MS = 2000
const OPEN_MS = 60_000

function wantedPort() {
  const said = process.env.PORT?.trim() || '3000'
  const port = Number(said)
  if (Number.isInteger(port) && port >= 0 && port <= 65535) return port
  throw new Unready(`PORT is "${said}". Give a whole number from 1 to 65535.`)
}

const listen = (server, port, host) =>
  new Promise((resolve, reject) => {
    server.once('error', (fault) =>
      reject(
        fault.code === 'EADDRINUSE'
          ? new Unready(`Port ${port} is in use. Stop the program that uses it, or choose another: PORT=3001 npm start`)
          : fault.code === 'EACCES'
            ? new Unready(`Port ${port} may not be opened. Choose one above 1023: PORT=3001 npm start`)
            : fault,
      ),
    )
    server.listen({ port, host }, () => resolve(server.address().port))
  })

/** The port is taken first, so that a second start says so before it builds for a minute. */
async function serve({ crew, proxied }) {
  let handle = (_request, response) => response.writeHead(503).end('Emberslate is starting.')
  const answer = (request, response) => {
    admit(request, proxied)
    handle(request, response)
  }
  const server = createServer(answer)
  refuseUpgrades(server)
  // Without a host Node listens on every address; behind a proxy only the proxy may reach us.
  const open = crew && !proxied
  const tlsPort = open ? trustedPort(wantedPort()) : null
  const port = await listen(server, wantedPort(), open ? undefined : HOST)
  await makeReady({ build: true })
  const trusted = open ? await openTrustedLine(answer, (tls) => listen(tls, tlsPort)) : null
  Object.assign(process.env, { EMBERSLATE_CREW: crew ? '1' : '', EMBERSLATE_PLAIN_PORT: String(port) })
  if (trusted) process.env.EMBERSLATE_TLS_PORT = String(trusted.port)
  process.env.NODE_ENV = 'production'
  const { default: next } = await import('next')
  // Next calls every loopback name "localhost"; under another name it would take its own rewrites for another server's.
  const app = next({ dev: false, dir: process.cwd(), hostname: 'localhost', port, httpServer: server })
  await app.prepare()
  handle = app.getRequestHandler()
  // Open for business means that a page answers: the database opens on the way, and says so itself if it cannot.
  await fetch(`http://${HOST}:${port}/api/healthz`, { signal: AbortSignal.timeout(OPEN_MS) }).catch(() => {
    const folder = process.env.EMBERSLATE_DATA?.trim() || '.data'
    throw new Unready(`The database in ${folder} did not open. Set EMBERSLATE_DATA to a folder on a disk that answers.`)
  })
  console.log(`Emberslate is at http://${HOST}:${port}`)
  if (trusted) for (const line of addressLines(port, trusted)) console.log(line)
  return { servers: trusted ? [server, trusted.server] : [server], app }
}

function stopOn(signal, { servers, app }) {
  process.once(signal, () => {
    setTimeout(() => process.exit(0), SHUTDOWN_MS).unref()
    for (const server of servers) {
      server.close()
      server.closeAllConnections()
    }
    app.close().finally(() => process.exit(0))
  })
}

process.chdir(fileURLToPath(new URL('../..', import.meta.url)))
try {
  const running = await serve(askedFor(process.argv.slice(2)))
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) stopOn(signal, running)
} catch (fault) {
  console.error(fault instanceof Unready ? fault.message : fault)
  process.exit(1)
}
