'use client'
import { useState } from 'react'
import { photoName } from '@/lib/log/photo-name'
import { FOOD_STATES } from '@/lib/plan/vocabulary'
import {
  keepsNoPhotographs,
  none,
  note,
  noteKept,
  notSaid,
  roast,
  saveWords,
  stateWords,
  thisPhoneCouldNotKeep,
  whatToRemember,
  writeNoteFirst,
} from '../words/sheets'
import { PhotoField, type Taken } from './photos/photo-field'
import { usePhotos } from './photos/photos-here'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'
import { ShotPicker } from './shot-picker'

/** A note for continuity: of a shot, a roast, the state it was in. */
export function NoteSheet({ close }: SheetProps) {
  const { session, log } = useSet()
  const [text, setText] = useState('')
  const [shot, setShot] = useState<string | null>(null)
  const [cook, setCook] = useState('')
  const [state, setState] = useState('')
  const [fault, setFault] = useState('')
  const [taken, setTaken] = useState<Taken | null>(null)
  const photos = usePhotos()
  const save = async () => {
    if (text.trim() === '' && !taken) return setFault(writeNoteFirst)
    try {
      const photo = taken && photos ? await photos.add({ name: photoName(taken, 'image/jpeg'), bytes: taken }) : null
      const about = { ...(shot && { shot }), ...(cook && { cook }), ...(state && { state }), ...(photo && { photo }) }
      log({ kind: 'note', text: text.trim() || 'Photograph', ...about }, noteKept)
      close()
    } catch {
      setFault(thisPhoneCouldNotKeep)
    }
  }
  return (
    <Sheet title={note} close={close}>
      <label className="line">
        {whatToRemember}
        <textarea rows={4} maxLength={2000} value={text} onChange={(event) => setText(event.target.value)} />
      </label>
      <p className="told" role="alert">
        {fault}
      </p>
      {photos && <PhotoField taken={taken} onTake={setTaken} />}
      {photos && !photos.lasting && <p className="told">{keepsNoPhotographs}</p>}
      <ShotPicker value={shot} onChoose={setShot} />
      <div className="pair">
        <label>
          {roast}
          <select value={cook} onChange={(event) => setCook(event.target.value)}>
            <option value="">{none}</option>
            {session.day.cooks.map(({ id }) => (
              <option key={id}>{id}</option>
            ))}
          </select>
        </label>
        <label>
          {stateWords}
          <select value={state} onChange={(event) => setState(event.target.value)}>
            <option value="">{notSaid}</option>
            {FOOD_STATES.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
      </div>
      <div className="foot">
        <div className="thumb">
          <button type="button" className="main" onClick={save}>
            {saveWords}
          </button>
        </div>
      </div>
    </Sheet>
  )
}
