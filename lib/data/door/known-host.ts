import 'server-only'
import { crewMode, givenNames } from '../env'
import { hostNames } from './lan-names.mjs'

/** A machine may change its address while it serves; asking the system for every request would be dear. */
const FRESH_MS = 5000
const HOST = /^(\[[0-9a-f:.]+\]|[^:]+)(:\d{1,5})?$/i
let names = new Set<string>()
let asked = Number.NEGATIVE_INFINITY

/** Whether a Host header names this machine. A foreign one means that another site's name was pointed here. */
export function isKnownHost(header: string, now = Date.now()): boolean {
  const name = HOST.exec(header)?.[1]?.toLowerCase()
  if (!name) return false
  if (now - asked > FRESH_MS) {
    names = new Set(hostNames(crewMode(), givenNames()))
    asked = now
  }
  return names.has(name)
}
