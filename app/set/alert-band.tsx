'use client'
import { useEffect, useRef } from 'react'
import { channelsNow } from '@/lib/session/who'
import { CallAnswers } from './answers'
import { Count } from './count'
import { HandDirectly } from './hand-over'
import { openAlert } from './open-alert'
import { useSet } from './set-context'

/** Over whatever is open: one action, its owner, its deadline. It goes when somebody answers. */
export function AlertBand() {
  const { snapshot, session, me, now, clock, nameOf } = useSet()
  const alert = openAlert(snapshot, me)
  const box = useRef<HTMLDivElement>(null)
  const call = alert?.call
  useEffect(() => {
    if (call !== undefined) box.current?.focus()
  }, [call])
  if (!alert) return null
  const silent = !channelsNow(session).includes('sound')
  const mine = alert.owner === me
  return (
    <div
      className={`alert ${silent ? 'silent' : ''}`}
      role="alertdialog"
      aria-modal="true"
      aria-label={alert.action}
      tabIndex={-1}
      ref={box}
    >
      <p className="alert-top">
        <span>{mine ? 'to you' : `to ${nameOf(alert.owner)}, and to you`}</span>
        <span>{silent ? 'a take rolls: silent' : clock(now)}</span>
      </p>
      <p className="alert-do">{alert.action}</p>
      <p className="lb">
        {now >= alert.deadline ? `it was due at ${clock(alert.deadline)}` : `by ${clock(alert.deadline)}, in`}
      </p>
      <Count at={alert.deadline} now={now} />
      <div className="foot">
        <CallAnswers call={alert.call} answered={null} />
        <HandDirectly key={alert.call} call={alert.call} />
        <p className="fine">
          {mine ? 'Unanswered, it goes to somebody else.' : `${nameOf(alert.owner)} sees to it that it is done.`}
        </p>
      </div>
    </div>
  )
}
