import { LARGEST_PHOTO_BYTES } from '@/lib/log/photo-name'

const LONG_EDGE_PX = 1600
const QUALITIES = [0.8, 0.6, 0.4]

/** A picture as it is sent: small, upright, and drawn anew, so that place and camera told within it are gone. */
export async function shrunk(file: Blob): Promise<Uint8Array<ArrayBuffer>> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => {
    throw new Error('This phone cannot read that picture. Take one, or choose a JPEG or PNG.')
  })
  const canvas = drawn(picture)
  picture.close()
  for (const quality of QUALITIES) {
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality))
    if (blob && blob.size <= LARGEST_PHOTO_BYTES) return new Uint8Array(await blob.arrayBuffer())
  }
  throw new Error('This picture stays too large however it is shrunk. Take another.')
}

function drawn(picture: ImageBitmap): HTMLCanvasElement {
  const scale = Math.min(1, LONG_EDGE_PX / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(picture.width * scale))
  canvas.height = Math.max(1, Math.round(picture.height * scale))
  const pen = canvas.getContext('2d')
  if (!pen) throw new Error('This browser cannot shrink pictures.')
  // A JPEG has no transparency.
  pen.fillStyle = '#fff'
  pen.fillRect(0, 0, canvas.width, canvas.height)
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height)
  return canvas
}
