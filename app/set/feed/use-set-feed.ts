'use client'
import { useRouter } from 'next/navigation'
import { useEffect, useState } from 'react'
import type { SetFeed, SetOpening } from '../set-feed'
import { keepAwake } from './awake'
import { DEVICE_ALARM } from './device-alarm'
import { DEVICE_CLOCK } from './device-clock'
import { httpWire } from './http-wire'
import { openStore } from './indexed-store'
import { type Device, LiveFeed } from './live-feed'
import { keepForOffline } from './offline'
import { WorkerForecaster } from './own-forecast'

/** The live feed of a shoot for the screen that is open; it starts when the page is in the browser. */
export function useSetFeed(shootId: string, opening: SetOpening): SetFeed {
  const router = useRouter()
  const [feed, setFeed] = useState(
    () =>
      new LiveFeed(
        deviceOf(shootId, () => {}),
        opening,
      ),
  )
  // biome-ignore lint/correctness/useExhaustiveDependencies: the opening is where the feed begins; it goes on by itself.
  useEffect(() => {
    const live = new LiveFeed(
      deviceOf(shootId, () => router.refresh()),
      opening,
    )
    setFeed(live)
    return runs(live, shootId)
  }, [shootId])
  return feed
}

const deviceOf = (shootId: string, newDay: () => void): Device => ({
  wire: httpWire(shootId),
  clock: DEVICE_CLOCK,
  alarm: DEVICE_ALARM,
  forecaster: new WorkerForecaster(),
  openStore: () => openStore(shootId),
  chance: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
  newDay,
  startAnew: () => window.location.reload(),
})

/** Starts it, with what the page hears of the device; returns how to stop it. */
function runs(live: LiveFeed, shootId: string): () => void {
  const stops = [
    keepAwake(),
    DEVICE_ALARM.unlockOnTap(),
    hearing(window, 'online', () => live.lookAgain()),
    hearing(window, 'offline', () => live.networkGone()),
    hearing(window, 'pagehide', () => live.keepNow()),
    hearing(document, 'visibilitychange', () =>
      document.visibilityState === 'visible' ? live.lookAgain() : live.keepNow(),
    ),
    () => live.stop(),
  ]
  void live.start()
  // Its script comes through the service worker, where there is one, and so is kept.
  void keepForOffline(shootId).finally(() => live.warm())
  return () => {
    for (const stop of stops) stop()
  }
}

function hearing(target: EventTarget, event: string, then: () => void): () => void {
  target.addEventListener(event, then)
  return () => target.removeEventListener(event, then)
}
