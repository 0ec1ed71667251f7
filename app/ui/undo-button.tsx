'use client'
import { useRouter } from 'next/navigation'
import { useState, useTransition } from 'react'
import { allSaved } from '../shoots/unsaved'
import { undoLastChange, undoWaits } from '../words/shared'
import { send } from './send'

/** Takes the last saved change back; the version before it becomes the newest, nothing is deleted. */
export function UndoButton({ id, canUndo }: { id: string; canUndo: boolean }) {
  const router = useRouter()
  const [waiting, start] = useTransition()
  const [fault, setFault] = useState('')
  if (!canUndo) return null
  const undo = () =>
    start(async () => {
      setFault('')
      // Else the undo would pass by what was typed just now, and that would be saved over it.
      if (!(await allSaved())) return setFault(undoWaits)
      const answer = await send(`/api/shoots/${id}/undo`, 'POST', {})
      if (answer.ok) router.refresh()
      else setFault(answer.sentence)
    })
  return (
    <span className="no-print">
      <button type="button" className="textlink" onClick={undo} disabled={waiting}>
        {undoLastChange}
      </button>
      <span role="status" className="small">
        {fault}
      </span>
    </span>
  )
}
