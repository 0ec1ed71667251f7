'use client'
import { createContext, type ReactNode, useContext, useEffect, useMemo, useState, useSyncExternalStore } from 'react'
import { DEVICE_CLOCK } from '../feed/device-clock'
import { useSet } from '../set-context'
import { PhotoQueue, type SendPhoto } from './photo-queue'
import { openPhotoStore, type WaitingPhoto } from './photo-store'
import './photos.css'

/** The photographs of the shoot as this screen has them. */
export interface Photos {
  /** Where the server has it. */
  readonly urlOf: (name: string) => string
  /** Those of this phone that are on their way. */
  readonly waiting: ReadonlyMap<string, WaitingPhoto>
  /** Whether they outlive the page until they are sent. */
  readonly lasting: boolean
  /** Its name, once it is safe on this phone. */
  readonly add: (photo: WaitingPhoto) => Promise<string>
}
const Context = createContext<Photos | null>(null)
/** Null where nothing is photographed: a day that is played. */
export const usePhotos = (): Photos | null => useContext(Context)

const ANSWER_WITHIN_MS = 60_000
const NOT_NOW = new Set([401, 403, 404, 429])
const sender =
  (path: string): SendPhoto =>
  async ({ bytes }) => {
    const headers = { 'content-type': 'image/jpeg' }
    const signal = AbortSignal.timeout(ANSWER_WITHIN_MS)
    const { ok, status } = await fetch(path, { method: 'POST', headers, body: bytes, signal })
    return ok ? 'kept' : status >= 500 || NOT_NOW.has(status) ? 'not-now' : 'refused'
  }

const none = new Map<string, WaitingPhoto>()
const never = () => () => {}
const nothing = () => none

export function PhotosHere({ shootId, children }: { shootId: string; children: ReactNode }) {
  const path = `/api/shoots/${encodeURIComponent(shootId)}/photos`
  const { link } = useSet().snapshot
  const [queue, setQueue] = useState<PhotoQueue | null>(null)
  const [lasting, setLasting] = useState(true)
  useEffect(() => {
    const store = openPhotoStore(shootId)
    void store.then((opened) => setLasting(opened.lasting))
    const made = new PhotoQueue(store, sender(path), DEVICE_CLOCK)
    setQueue(made)
    void made.start()
    return () => made.stop()
  }, [shootId, path])
  useEffect(() => {
    if (link === 'live') queue?.hurry()
  }, [link, queue])
  const waiting = useSyncExternalStore(queue?.subscribe ?? never, queue?.waiting ?? nothing, nothing)
  const photos = useMemo(
    (): Photos | null =>
      queue && { urlOf: (name) => `${path}/${name}`, waiting, lasting, add: (photo) => queue.add(photo) },
    [queue, path, waiting, lasting],
  )
  return <Context value={photos}>{children}</Context>
}
