'use client'
import { useEffect, useMemo, useState } from 'react'
import { UndoLine } from '../../ui/undo-line'
import {
  asItWillBeKept,
  chooseOne,
  photograph,
  photographLeftOff,
  shrinkingIt,
  takeAnother,
  withoutIt,
} from '../../words/photos'
import { shrunk } from './shrink'

const SHRINKING = shrinkingIt
export type Taken = Uint8Array<ArrayBuffer>

/** Takes a photograph or chooses one, and shows it as it will be sent. */
export function PhotoField({ taken, onTake }: { taken: Taken | null; onTake: (taken: Taken | null) => void }) {
  const [state, setState] = useState<'' | typeof SHRINKING | { readonly fault: string }>('')
  const url = useMemo(() => taken && URL.createObjectURL(new Blob([taken], { type: 'image/jpeg' })), [taken])
  useEffect(() => () => void (url && URL.revokeObjectURL(url)), [url])
  /** Left off, and had again by one press. */
  const [leftOff, setLeftOff] = useState<Taken | null>(null)
  const take = async (file: File | undefined) => {
    if (!file) return
    setState(SHRINKING)
    try {
      onTake(await shrunk(file))
      setLeftOff(null)
      setState('')
    } catch (fault) {
      setState({ fault: (fault as Error).message })
    }
  }
  return (
    <div className="photo-field">
      {/* biome-ignore lint/performance/noImgElement: it is on this phone only. */}
      {url && <img src={url} alt={asItWillBeKept} />}
      <div className="photo-takes">
        <TakeButton words={taken ? takeAnother : photograph} camera onFile={take} />
        <TakeButton words={chooseOne} onFile={take} />
        {taken && (
          <button
            type="button"
            onClick={() => {
              setLeftOff(taken)
              onTake(null)
            }}
          >
            {withoutIt}
          </button>
        )}
      </div>
      <UndoLine said={!taken && leftOff ? photographLeftOff : null} undo={() => onTake(leftOff)} />
      <p className="told" role={typeof state === 'string' ? 'status' : 'alert'}>
        {typeof state === 'string' ? state : state.fault}
      </p>
    </div>
  )
}

function TakeButton(props: { words: string; camera?: true; onFile: (file: File | undefined) => void }) {
  return (
    <label className="take-photo">
      {props.words}
      <input
        type="file"
        accept="image/*"
        capture={props.camera && 'environment'}
        className="sr-only"
        onChange={(event) => {
          props.onFile(event.target.files?.[0])
          // The same picture may be chosen again.
          event.target.value = ''
        }}
      />
    </label>
  )
}
