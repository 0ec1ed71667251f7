import { readFileSync } from 'node:fs'
import path from 'node:path'
import { isPrivateAddress, lanAddresses, lanNames } from '../../data/door/lan-names.mjs'
import { broken, type Finding, howMany, look, ok } from './finding'

const DAY_MS = 86_400_000
/** The start command makes a new one when it has fewer days left, and while it serves. */
const RENEWED_DAYS = 30

interface Kept {
  readonly authority: { readonly ends: number }
  readonly set: { readonly ends: number; readonly names: readonly string[] }
}

/** What the trusted line shows to phones, and whether they will have to trust anew. */
export function certificateFinding(folder: string, given: string, now = Date.now()): Finding {
  const about = 'Certificate'
  let kept: Kept
  try {
    kept = JSON.parse(readFileSync(path.join(folder, 'door', 'tls.json'), 'utf8'))
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT')
      return ok(about, 'None yet: npm start -- --crew makes one, and phones trust it once.')
    return broken(
      about,
      'door/tls.json does not read.',
      'The next npm start -- --crew makes a new one; phones then trust the set once more, at /trust.',
    )
  }
  const days = (ends: number) => Math.floor((ends - now) / DAY_MS)
  const [authority, set] = [days(kept.authority.ends), days(kept.set.ends)]
  if (authority <= RENEWED_DAYS)
    return look(
      about,
      `What phones trust ${authority < 0 ? 'has run out' : `runs out in ${howMany(authority, 'day')}`}.`,
      'Restart with --crew well before the day, then open /trust once more on each phone.',
    )
  const missing = namesNow(given).filter((name) => !kept.set.names.includes(name))
  if (missing.length > 0)
    return look(
      about,
      `It lacks ${missing.join(', ')}.`,
      'npm start -- --crew makes one for these names; a new name outside .local wants trusting once more.',
    )
  if (set < 0) return look(about, 'It has run out.', 'npm start -- --crew makes a new one; phones need do nothing.')
  return ok(about, `Good for ${howMany(set, 'day')}, for ${kept.set.names.join(', ')}.`)
}

function namesNow(given: string): readonly string[] {
  const addresses = lanAddresses().map((address) => address.replace(/^\[|\]$/g, ''))
  return [...lanNames(given), ...addresses.filter((address) => isPrivateAddress(address))]
}
