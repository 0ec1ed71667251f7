/** `npm start`: makes ready whatever is missing, then serves on this computer only, or with `--crew` on the local network too. Plain Node: it runs before npm ci. */
import { createServer } from 'node:http'
import { fileURLToPath } from 'node:url'
import { say, sayFault } from '../data/log-line.mjs'
import { boundLines } from './bound-lines.mjs'
import { addressLines, admit, openTrustedLine, refuseUpgrades, trustedPort } from './crew-line.mjs'
import { makeReady, Unready } from './make-ready.mjs'
import { LINE, refusedEarly, refuseUnread } from './refuse-early.mjs'
import { numbered } from './requests.mjs'
import { askedFor, builtFrom, onlyHealth } from './role.mjs'
import { starting, untilReady } from './until-ready.mjs'

const HOST = '127.0.0.1'
const SHUTDOWN_MS = 2000
/** A job at work may come to its end (lib/data/server/jobs-taken.ts). */
const LEAVE_MS = 11_000

/** Nobody types the address of a worker: it takes any port that is free. */
function wantedPort(role) {
  const said = process.env.PORT?.trim() || (role === 'worker' ? '0' : '3000')
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
async function serve({ crew, proxied, role }) {
  let handle = starting
  const answered = (request, response) => {
    if (refusedEarly(request, response)) return
    admit(request, proxied)
    handle(request, response)
  }
  const answer = (request, response) => numbered(request, response, { proxied, answer: answered })
  const server = createServer(LINE, answer)
  refuseUpgrades(server)
  boundLines(server)
  refuseUnread(server, answer)
  // Without a host Node listens on every address; behind a proxy only the proxy may reach us.
  const open = crew && !proxied
  const tlsPort = open ? trustedPort(wantedPort(role)) : null
  const port = await listen(server, wantedPort(role), open ? undefined : HOST)
  await makeReady({ build: true })
  const trusted = open ? await openTrustedLine(answer, (tls) => listen(tls, tlsPort)) : null
  Object.assign(process.env, { EMBERSLATE_CREW: crew ? '1' : '', EMBERSLATE_PLAIN_PORT: String(port) })
  Object.assign(process.env, { EMBERSLATE_ROLE: role, EMBERSLATE_BUILD: builtFrom() })
  if (trusted) process.env.EMBERSLATE_TLS_PORT = String(trusted.port)
  process.env.NODE_ENV = 'production'
  const { default: next } = await import('next')
  // Next calls every loopback name "localhost"; under another name it would take its own rewrites for another server's.
  // What breaks is told by instrumentation.ts: Next's own words may quote a shoot.
  const app = next({ dev: false, quiet: true, dir: process.cwd(), hostname: 'localhost', port, httpServer: server })
  await app.prepare()
  handle = role === 'worker' ? onlyHealth(app.getRequestHandler()) : app.getRequestHandler()
  // Open for business means that a page answers: the database opens on the way, and says so itself if it cannot.
  for (const sentence of await untilReady(`http://${HOST}:${port}`)) console.error(sentence)
  console.log(role === 'worker' ? workerLine(port) : `Emberslate is at http://${HOST}:${port}`)
  if (trusted) for (const line of addressLines(port, trusted)) console.log(line)
  if (!process.stdout.isTTY) say('info', 'started', { port, tlsPort, crew, proxied, role, pid: process.pid })
  return { servers: trusted ? [server, trusted.server] : [server], app }
}

const workerLine = (port) => `Emberslate takes jobs here. Whether it can, http://${HOST}:${port}/readyz says.`

function stopOn(signal, { servers, app }) {
  process.once(signal, () => {
    if (!process.stdout.isTTY) say('info', 'stopping', { signal })
    const leave = globalThis.emberslateLeave
    setTimeout(() => process.exit(0), leave ? LEAVE_MS : SHUTDOWN_MS).unref()
    for (const server of servers) {
      server.close()
      server.closeAllConnections()
    }
    Promise.resolve(leave?.())
      .catch((fault) => sayFault('leaving-broke', fault))
      .then(() => app.close())
      .finally(() => process.exit(0))
  })
}

/** Node would print the fault as it is, with whatever it quotes. */
process.on('uncaughtException', (fault) => {
  sayFault('crashed', fault)
  process.exit(1)
})
process.chdir(fileURLToPath(new URL('../..', import.meta.url)))
try {
  const running = await serve(askedFor(process.argv.slice(2)))
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) stopOn(signal, running)
} catch (fault) {
  console.error(fault instanceof Unready ? fault.message : fault)
  process.exit(1)
}
