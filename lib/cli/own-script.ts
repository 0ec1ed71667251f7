import { gzipSync } from 'node:zlib'

/** A page that does not exist is the empty page: the frame of the app and nothing in it. */
const EMPTY_PAGE = '/nothing-here'
const KB = 1024

/** Addresses of the scripts that a page's answer names. */
export async function scriptsOf(address: string, page: string): Promise<Set<string>> {
  const html = await (await fetch(address + page)).text()
  return new Set(
    [...html.matchAll(/<script[^>]+src="([^"]+)"/g)].map(([, src]) => new URL(src as string, address).href),
  )
}

/** For each page, in kB, the gzip bytes of the scripts it asks for at once, above those of an empty page of the same build. */
export async function ownScriptKb(address: string, pages: readonly string[]): Promise<Map<string, number>> {
  const sizes = new Map<string, number>()
  const sizeOf = async (script: string) => {
    const known = sizes.get(script)
    if (known !== undefined) return known
    const size = gzipSync(Buffer.from(await (await fetch(script)).arrayBuffer())).length
    sizes.set(script, size)
    return size
  }
  const bytesOf = async (page: string) => {
    let bytes = 0
    for (const script of await scriptsOf(address, page)) bytes += await sizeOf(script)
    return bytes
  }
  const empty = await bytesOf(EMPTY_PAGE)
  const own = new Map<string, number>()
  for (const page of pages) own.set(page, ((await bytesOf(page)) - empty) / KB)
  return own
}
