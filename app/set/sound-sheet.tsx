'use client'
import { soundCheck } from '../words/sheets'
import { SoundCheck } from './feed/sound-check'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

/** Before the first call each phone plays its tones, and its holder says that they were heard. */
export function SoundSheet({ close }: SheetProps) {
  const { feed } = useSet()
  return (
    <Sheet title={soundCheck} close={close}>
      <SoundCheck feed={feed} />
    </Sheet>
  )
}
