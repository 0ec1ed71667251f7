import type { EntryDocument } from '@/lib/log/entry'
import type { Line } from '@/lib/log/log'
import { plainEntry } from '@/lib/log/plain-entry'
import { instant } from '@/lib/units'
import type { KeptLine } from './store'

/** A line as the server tells it, or null where it does not read: of a newer server, perhaps. */
export function heardLine(data: string): Line | null {
  const { received, sent, ...document } = JSON.parse(data) as EntryDocument & { received: string; sent: string }
  const receipt = { received: instant(Date.parse(received)), sent: instant(Date.parse(sent)) }
  return keptLine({ document, receipt })
}

export function keptLine({ document, receipt }: KeptLine): Line | null {
  const read = plainEntry(document)
  if (!read.ok) console.warn('An entry of the log does not read here:', document, read.problems)
  if (!read.ok) return null
  return receipt ? { entry: read.value, document, receipt } : { entry: read.value, document }
}
