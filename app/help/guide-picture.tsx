import type { Picture } from '../words/guides/guide'
import pictures from './pictures.json'

interface Taken {
  readonly width: number
  readonly height: number
  /** Of what it shows; the browser keeps a picture until this changes. */
  readonly shows: string
}
const TAKEN: Readonly<Record<string, Taken>> = pictures
/** Phones are shown about as large as they are. */
const PHONE_PX = 500

/** A screenshot that `npm run pictures` took. */
export function GuidePicture({ name, alt }: Picture) {
  const taken = TAKEN[name]
  if (!taken) return null
  const { width, height, shows } = taken
  return (
    // biome-ignore lint/performance/noImgElement: it is as small as it gets, and is kept for when there is no network
    <img
      className={width < PHONE_PX ? 'guide-picture phone' : 'guide-picture'}
      src={`/help/${name}.webp?${shows}`}
      width={width}
      height={height}
      alt={alt}
      loading="lazy"
      decoding="async"
    />
  )
}
