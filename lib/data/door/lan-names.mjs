import { hostname, networkInterfaces } from 'node:os'

/** Plain Node, because the start command needs it before anything is built. */

const LOOPBACK = ['127.0.0.1', 'localhost', '[::1]']

/** Addresses of this machine on its networks, the likeliest for a phone first; IPv6 in brackets, none that needs a zone. */
export function lanAddresses() {
  const all = Object.values(networkInterfaces())
    .flat()
    .filter((one) => one && !one.internal)
  const four = all.filter(({ family }) => family === 'IPv4').map(({ address }) => address)
  const six = all.filter(({ family, scopeid }) => family === 'IPv6' && !scopeid).map(({ address }) => `[${address}]`)
  return [...four, ...six]
}

export const isAddress = (name) => /^[\d.]+$|^\[/.test(name)
const PRIVATE =
  /^\[?(10\.|172\.(1[6-9]|2\d|3[01])\.|192\.168\.|169\.254\.|100\.(6[4-9]|[7-9]\d|1[01]\d|12[0-7])\.|127\.|f[cd]|fe[89ab])/i
/** Of the local network alone (RFC 1918, 3927, 4193, 4291, 6598); for others our certificate may not speak. */
export const isPrivateAddress = (address) => PRIVATE.test(address)

/** Names under which the local network may know this machine, and those that were given. */
export function lanNames(given) {
  const own = hostname().toLowerCase()
  const local = own.endsWith('.local') ? [own] : [`${own}.local`, own]
  const named = given
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((name) => /^[a-z0-9]([a-z0-9.-]{0,251}[a-z0-9])?$/.test(name))
  return [...new Set([...named, ...local])]
}

/** Every name of the Host header that we answer to. */
export const hostNames = (crew, given) => (crew ? [...LOOPBACK, ...lanAddresses(), ...lanNames(given)] : LOOPBACK)
