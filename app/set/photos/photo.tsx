'use client'
import { useEffect, useMemo, useRef, useState } from 'react'
import { PHOTO_NAME } from '@/lib/log/photo-name'
import {
  back,
  enlarge,
  notTakenByServerKept,
  photographIsStillOnPhone,
  waitsHere,
  waitsOnThisPageOnly,
} from '../../words/photos'
import { usePhotos } from './photos-here'

/** Another phone's photograph may come any time after its note. */
const LOOK_AGAIN_MS = 20_000

/** A photograph of a note, small; a press shows it whole. `words`: what the note says. */
export function Photo({ name, words }: { name: string; words: string }) {
  const photos = usePhotos()
  const here = photos?.waiting.get(name)
  const own = useMemo(() => here && URL.createObjectURL(new Blob([here.bytes], { type: 'image/jpeg' })), [here])
  useEffect(() => () => void (own && URL.revokeObjectURL(own)), [own])
  const { missing, tries, miss } = useLookAgain()
  const box = useRef<HTMLDialogElement>(null)
  if (!photos || !PHOTO_NAME.test(name)) return null
  if (missing && !own) return <span className="photo-away">{photographIsStillOnPhone}</span>
  const source = own ?? `${photos.urlOf(name)}${tries > 0 ? `?${tries}` : ''}`
  return (
    <>
      <button type="button" className="photo" aria-label={enlarge(words)} onClick={() => box.current?.showModal()}>
        {/* biome-ignore lint/performance/noImgElement: it is small already, and may be on this phone only. */}
        <img src={source} alt="" loading="lazy" onError={miss} />
        {own && (
          <small>{here?.refused ? notTakenByServerKept : photos.lasting ? waitsHere : waitsOnThisPageOnly}</small>
        )}
      </button>
      <dialog ref={box} className="photo-box" aria-label={words}>
        <form method="dialog">
          <button type="submit" className="btn">
            {back}
          </button>
        </form>
        {/* biome-ignore lint/performance/noImgElement: as above. */}
        <img src={source} alt={words} loading="lazy" />
        <p>{words}</p>
      </dialog>
    </>
  )
}

function useLookAgain() {
  const [missing, setMissing] = useState(false)
  const [tries, setTries] = useState(0)
  useEffect(() => {
    if (!missing) return
    const timer = setTimeout(() => {
      setMissing(false)
      setTries(tries + 1)
    }, LOOK_AGAIN_MS)
    return () => clearTimeout(timer)
  }, [missing, tries])
  return { missing, tries, miss: () => setMissing(true) }
}
