import { Suspense } from 'react'
import type { Shoot } from '@/lib/plan/shoot'
import { knownSizes, sizesReady } from '../../../../sizes-ready'
import { Working } from '../../../../ui/working'
import { lastsHere, otherSizes } from '../../../../words/working'
import { Sizes } from './card-tables'

/** The times for other sizes: at once where they are known, else as soon as they are; the page does not wait for them. */
export function SizesWhenReady({ shoot }: { shoot: Shoot }) {
  const known = knownSizes(shoot)
  if (known) return <Sizes table={known} />
  return (
    <Suspense fallback={<Working what={otherSizes} lasts={lastsHere} />}>
      <SizesLater shoot={shoot} />
    </Suspense>
  )
}
const SizesLater = async ({ shoot }: { shoot: Shoot }) => <Sizes table={await sizesReady(shoot)} />
