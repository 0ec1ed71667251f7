import { readFileSync } from 'node:fs'

export interface Locked {
  readonly version?: string
  readonly resolved?: string
  readonly integrity?: string
  readonly hasInstallScript?: boolean
  readonly inBundle?: boolean
  readonly dependencies?: Readonly<Record<string, string>>
  readonly peerDependencies?: Readonly<Record<string, string>>
  readonly peerDependenciesMeta?: Readonly<Record<string, { readonly optional?: boolean }>>
}
export const lock: { readonly lockfileVersion: number; readonly packages: Readonly<Record<string, Locked>> } =
  JSON.parse(readFileSync('package-lock.json', 'utf8'))

/** Where a package that stands at `from` finds `name`: beside it, or further up. */
function placeOf(name: string, from: string): string | undefined {
  for (let at = from; ; at = at.slice(0, Math.max(0, at.lastIndexOf('node_modules/') - 1))) {
    const place = `${at && `${at}/`}node_modules/${name}`
    if (lock.packages[place]) return place
    if (at === '') return undefined
  }
}

/** The places of all that a direct dependency cannot do without, its own among them. */
export function broughtBy(name: string): ReadonlySet<string> {
  const found = new Set<string>()
  const waiting = [placeOf(name, '')]
  for (let place = waiting.pop(); place; place = waiting.pop()) {
    if (found.has(place)) continue
    found.add(place)
    const { dependencies = {}, peerDependencies = {}, peerDependenciesMeta = {} } = lock.packages[place] as Locked
    const peers = Object.keys(peerDependencies).filter((peer) => !peerDependenciesMeta[peer]?.optional)
    for (const one of [...Object.keys(dependencies), ...peers]) {
      const next = placeOf(one, place)
      if (next) waiting.push(next)
    }
  }
  return found
}
