import { thisFileIsLarger, thisIsNotTextFile } from '../../words/readings'

/** A reading of two probes each second for a day and a half. */
const LARGEST_BYTES = 20_000_000

/** The text of a logger's file, in whichever of the usual encodings it is, or a sentence. */
export async function fileText(file: Blob): Promise<string | { readonly sentence: string }> {
  if (file.size > LARGEST_BYTES) return { sentence: thisFileIsLarger }
  const bytes = new Uint8Array(await file.arrayBuffer())
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  if (bytes.subarray(0, 2000).includes(0)) return { sentence: thisIsNotTextFile }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
