/** What `npm start -- --crew` adds: who stands at the other end of a line, and a second line with TLS. */
import { createServer } from 'node:https'
import path from 'node:path'
import { isAddress, isPrivateAddress, lanAddresses, lanNames } from '../data/door/lan-names.mjs'
import { boundLines } from './bound-lines.mjs'
import { Unready } from './make-ready.mjs'
import { endLine, LINE, refuseUnread } from './refuse-early.mjs'
import { setCertificate } from './set-certificate.mjs'

/** A machine may be given another address while it serves. */
const LOOK_MS = 30_000
const folder = () => path.resolve(process.env.EMBERSLATE_DATA?.trim() || '.data')
const given = () => process.env.EMBERSLATE_NAMES ?? ''

/** Beside the plain line's port, so that nobody has to remember it. */
export function trustedPort(plain) {
  if (plain + 443 <= 65535) return plain && plain + 443
  throw new Unready(`PORT is ${plain}, and the trusted line needs that plus 443. Choose at most 65092.`)
}

const last = (header) =>
  String(header ?? '')
    .split(',')
    .at(-1)
    .trim()
const plainAddress = (address) => String(address ?? '').replace(/^::ffff:(?=\d+\.)/, '')

/** Writes down how a request came in, over whatever the sender says of it: only a proxy that was announced is believed. */
export function admit(request, proxied) {
  const { headers, socket } = request
  const peer = proxied && headers['x-forwarded-for'] ? last(headers['x-forwarded-for']) : socket.remoteAddress
  const secure = proxied ? last(headers['x-forwarded-proto']) === 'https' : socket.encrypted === true
  for (const name of ['x-forwarded-host', 'x-forwarded-port', 'x-forwarded-for', 'forwarded']) delete headers[name]
  headers['x-forwarded-proto'] = secure ? 'https' : 'http'
  headers['x-emberslate-peer'] = plainAddress(peer)
}

/** Nothing here speaks anything but HTTP; Next would leave such a line open for ever. */
export function refuseUpgrades(server) {
  server.on('upgrade', (_request, socket) => endLine(socket, 'bad-request'))
}

/** The line that phones may trust, under a certificate that follows this machine's addresses. */
export async function openTrustedLine(answer, listen) {
  const first = await setCertificate(folder(), given())
  const server = createServer({ ...LINE, key: first.key, cert: first.certificate }, answer)
  refuseUpgrades(server)
  boundLines(server)
  refuseUnread(server, answer)
  const port = await listen(server)
  const look = async () => {
    const now = await setCertificate(folder(), given(), true)
    if (now.changed) server.setSecureContext({ key: now.key, cert: now.certificate })
  }
  setInterval(() => look().catch((fault) => console.error(fault.message)), LOOK_MS).unref()
  return { server, port, newAuthority: first.newAuthority }
}

/** Where the crew finds the set, for the terminal. */
export function addressLines(port, { port: tlsPort, newAuthority }) {
  const names = [...lanAddresses(), ...lanNames(given()).filter((name) => name.includes('.'))]
  const certified = names.filter((name) => !isAddress(name) || isPrivateAddress(name))
  const lines = [
    `For the crew: ${names.map((name) => `http://${name}:${port}`).join('  ')}`,
    `By the trusted line: ${certified.map((name) => `https://${name}:${tlsPort}`).join('  ')}`,
  ]
  if (newAuthority) lines.push(`Phones trust the set once: open http://${names[0]}:${port}/trust on each.`)
  return lines
}
