/** Whether a photograph says where it was taken, which nobody on set means to tell. */
export function tellsPlace(bytes: Uint8Array): boolean {
  const all = text(bytes, 0, 4) === 'RIFF' ? webpParts(bytes) : jpegParts(bytes)
  return all.some((part) => (isExif(part) ? hasGps(part) : GPS_IN_XMP.test(text(part, 0, part.length))))
}

const GPS_IN_XMP = /GPSL(at|ong)itude/
const text = (bytes: Uint8Array, from: number, to: number) => {
  let read = ''
  for (const byte of bytes.subarray(from, to)) read += String.fromCharCode(byte)
  return read
}
const isExif = (part: Uint8Array) => ['II*\0', 'MM\0*'].includes(text(part, 0, 4))

const APP1 = 0xe1
const START_OF_SCAN = 0xda
/** What stands in the APP1 segments ahead of the picture (ITU-T T.81, B.1.1). */
function jpegParts(bytes: Uint8Array): Uint8Array[] {
  const found: Uint8Array[] = []
  for (let at = 2; at + 4 <= bytes.length && bytes[at] === 0xff; ) {
    const [marker, high, low] = [bytes[at + 1] as number, bytes[at + 2] as number, bytes[at + 3] as number]
    if (marker === START_OF_SCAN) break
    const end = at + 2 + high * 256 + low
    if (marker === APP1) {
      const part = bytes.subarray(at + 4, end)
      found.push(text(part, 0, 6) === 'Exif\0\0' ? part.subarray(6) : part)
    }
    at = end
  }
  return found
}

/** Its chunks EXIF and XMP (RFC 9649). */
function webpParts(bytes: Uint8Array): Uint8Array[] {
  const found: Uint8Array[] = []
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  for (let at = 12; at + 8 <= bytes.length; ) {
    const size = view.getUint32(at + 4, true)
    if (['EXIF', 'XMP '].includes(text(bytes, at, at + 4))) {
      const part = bytes.subarray(at + 8, at + 8 + size)
      found.push(text(part, 0, 6) === 'Exif\0\0' ? part.subarray(6) : part)
    }
    at += 8 + size + (size % 2)
  }
  return found
}

/** In its first directory, the pointer to one of places (CIPA DC-008, Exif, 4.6.3). */
const GPS_POINTER = 0x8825
function hasGps(tiff: Uint8Array): boolean {
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength)
  const little = tiff[0] === 0x49
  if (tiff.length < 8) return false
  const at = view.getUint32(4, little)
  if (at + 2 > tiff.length) return false
  const entries = view.getUint16(at, little)
  for (let i = 0; i < entries && at + 4 + i * 12 <= tiff.length; i++)
    if (view.getUint16(at + 2 + i * 12, little) === GPS_POINTER) return true
  return false
}
