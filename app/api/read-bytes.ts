import { BorderError } from '@/lib/data/border-error'

/** The body as bytes; `tooMuch` where it is longer than `most` of them, announced or not. */
export async function readBytes(request: Request, most: number, tooMuch: (bytes: number) => Error): Promise<Buffer> {
  const announced = Number(request.headers.get('content-length') ?? 0)
  if (announced > most) throw tooMuch(announced)
  const reader = request.body?.getReader()
  const read = () =>
    reader?.read().catch(() => {
      throw new BorderError('bad-request', { sentence: 'The body ended before its announced length.' })
    })
  const parts: Uint8Array[] = []
  let bytes = 0
  for (let part = await read(); part?.value; part = await read()) {
    bytes += part.value.byteLength
    if (bytes > most) throw tooMuch(bytes)
    parts.push(part.value)
  }
  return Buffer.concat(parts)
}
