import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'

/** What a photograph is kept as, with the ending of its name. */
export const PHOTO_TYPES = { 'image/jpeg': 'jpg', 'image/webp': 'webp' } as const
export type PhotoType = keyof typeof PHOTO_TYPES
/** A phone shrinks its pictures to a third of this. */
export const LARGEST_PHOTO_BYTES = 1_500_000
export const PHOTO_NAME = /^[0-9a-f]{64}\.(jpg|webp)$/

const JPEG = [0xff, 0xd8, 0xff]
const text = (bytes: Uint8Array, from: number, to: number) => String.fromCharCode(...bytes.subarray(from, to))

/** What the bytes are, by how they begin, whatever anybody calls them. */
export function photoTypeOf(bytes: Uint8Array): PhotoType | null {
  if (JPEG.every((byte, i) => bytes[i] === byte)) return 'image/jpeg'
  return text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 12) === 'WEBP' ? 'image/webp' : null
}

/** A photograph is named by its content (SHA-256), so that phone and server name it alike and it is kept once. */
export const photoName = (bytes: Uint8Array, type: PhotoType): string =>
  `${bytesToHex(sha256(bytes))}.${PHOTO_TYPES[type]}`

export const typeOfName = (name: string): PhotoType => (name.endsWith('.webp') ? 'image/webp' : 'image/jpeg')
