'use client'
import { useState } from 'react'
import { TIMECODE } from '@/lib/log/entry-words'
import { Choice } from './choice'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

/** What a camera's timecode is at a press: by it the edit finds every moment in the camera's clips. */
export function CameraClockSheet({ close }: SheetProps) {
  const { facts, log } = useSet()
  const [camera, setCamera] = useState(facts.cameras[0] ?? 'A')
  const [timecode, setTimecode] = useState('')
  const [isTold, setIsTold] = useState(false)
  const fault = isTold && !TIMECODE.test(timecode)
  const say = () => {
    setIsTold(true)
    if (!TIMECODE.test(timecode)) return
    log({ kind: 'camera-clock', camera, timecode }, `Camera ${camera}’s clock is logged.`)
    close()
  }
  return (
    <Sheet title="Camera clock" close={close}>
      {facts.cameras.length > 1 && (
        <Choice
          name="Camera"
          value={camera}
          options={facts.cameras.map((id) => [id, id] as const)}
          onChoose={setCamera}
        />
      )}
      <label className="line">
        Timecode it is about to show
        <input
          value={timecode}
          inputMode="numeric"
          placeholder="16:05:12:10"
          aria-invalid={fault}
          onChange={(event) => setTimecode(event.target.value)}
        />
        {fault && <span className="says">Write hours, minutes, seconds and frames, “16:05:12:10”.</span>}
      </label>
      <div className="foot">
        <div className="thumb">
          <button type="button" className="main" onClick={say}>
            It shows it now
          </button>
        </div>
      </div>
    </Sheet>
  )
}
