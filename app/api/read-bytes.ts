/** The body as bytes; `tooMuch` where it is longer than `most` of them, announced or not. */
export async function readBytes(request: Request, most: number, tooMuch: (bytes: number) => Error): Promise<Buffer> {
  const announced = Number(request.headers.get('content-length') ?? 0)
  if (announced > most) throw tooMuch(announced)
  const reader = request.body?.getReader()
  const parts: Uint8Array[] = []
  let bytes = 0
  for (let part = await reader?.read(); part?.value; part = await reader?.read()) {
    bytes += part.value.byteLength
    if (bytes > most) throw tooMuch(bytes)
    parts.push(part.value)
  }
  return Buffer.concat(parts)
}
