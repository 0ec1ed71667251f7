import { noAnswer, type Refused, refusalIn } from './send'

export interface NamedFile {
  readonly name: string
  readonly blob: Blob
}

/** The name that an answer gives its file (RFC 6266), letters outside ASCII by RFC 8187. */
export function nameIn(disposition: string | null): string | null {
  const long = /filename\*=UTF-8''([^;]+)/i.exec(disposition ?? '')?.[1]
  return long ? decodeURIComponent(long) : (/filename="([^"]+)"/i.exec(disposition ?? '')?.[1] ?? null)
}

/** A file as the server makes it, or why it does not. */
export async function fetchFile(path: string): Promise<{ ok: true; value: NamedFile } | Refused> {
  try {
    const response = await fetch(path)
    if (!response.ok) return refusalIn(response)
    // Whoever is no longer signed in is led to the door: a page, and no file, so nothing follows.
    if (response.redirected) {
      window.location.assign(response.url)
      return new Promise(() => {})
    }
    const name = nameIn(response.headers.get('content-disposition')) ?? path.split(/[/?]/).at(-1) ?? ''
    return { ok: true, value: { name, blob: await response.blob() } }
  } catch {
    return noAnswer()
  }
}

const KEPT_MS = 60_000
/** Among the browser's downloads. */
export function saveFile({ name, blob }: NamedFile): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(blob)
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), KEPT_MS)
}
