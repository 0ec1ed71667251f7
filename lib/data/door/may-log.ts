import type { EntryDocument } from '../../log/entry'
import type { Problem } from '../../refusals'
import { roleOf, type Visitor } from './access'

/** Why a visitor may not log this entry, each fault at its place; empty where they may. */
export function logFaults(visitor: Visitor, shoot: string, entry: EntryDocument): readonly Problem[] {
  const by = (entry.by ?? {}) as { readonly device?: unknown; readonly person?: unknown }
  const role = roleOf(visitor, shoot)
  if (role === 'device') return deviceFaults(visitor.device ?? '', entry, by)
  if (role !== 'crew') return []
  const own = visitor.grants.filter((grant) => grant.shoot === shoot).map(({ person }) => person)
  if (own.includes(by.person as string)) return []
  const sentence = `You log under your own name: write ${own.map((id) => `"${id}"`).join(' or ')} as the person. Only the producer logs for others.`
  return [{ pointer: '/by/person', sentence }]
}

function deviceFaults(
  name: string,
  { kind }: EntryDocument,
  by: { readonly device?: unknown; readonly person?: unknown },
): readonly Problem[] {
  const faults: Problem[] = []
  if (kind !== 'reading')
    faults.push({ pointer: '/kind', sentence: 'A device key sends readings and nothing else. Write "reading".' })
  if (by.device !== name)
    faults.push({ pointer: '/by/device', sentence: `This key is "${name}"'s. Write that as the device.` })
  if (by.person !== undefined)
    faults.push({ pointer: '/by/person', sentence: 'A device key speaks for no person. Leave "person" out.' })
  return faults
}
