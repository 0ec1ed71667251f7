'use client'
import { useState } from 'react'
import { cameraClock, cameraClockLogged, itShowsItNow, timecodeItIsAbout } from '../words/sheets'
import { CameraChoice } from './camera-choice'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'
import { NO_TIMECODE, typedTimecode } from './typed-timecode'

/** What a camera's timecode is at a press: by it the edit finds every moment in the camera's clips. */
export function CameraClockSheet({ close }: SheetProps) {
  const { facts, log } = useSet()
  const [camera, setCamera] = useState(facts.cameras[0] ?? 'A')
  const [text, setText] = useState('')
  const [isTold, setIsTold] = useState(false)
  const timecode = typedTimecode(text)
  const fault = isTold && timecode === null
  const say = () => {
    setIsTold(true)
    if (timecode === null) return
    log({ kind: 'camera-clock', camera, timecode }, cameraClockLogged(camera))
    close()
  }
  return (
    <Sheet title={cameraClock} close={close}>
      <CameraChoice value={camera} onChoose={setCamera} />
      <label className="line">
        {timecodeItIsAbout}
        <input
          value={text}
          inputMode="numeric"
          placeholder="16:05:12:10"
          aria-invalid={fault}
          onChange={(event) => setText(event.target.value)}
        />
        {fault && <span className="says">{NO_TIMECODE}</span>}
      </label>
      <div className="foot">
        <div className="thumb">
          <button type="button" className="main" onClick={say}>
            {itShowsItNow}
          </button>
        </div>
      </div>
    </Sheet>
  )
}
