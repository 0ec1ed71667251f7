'use client'
import { channelsNow } from '@/lib/session/who'
import { byIn, itWasDue, seesTo, takeRollsSilent, toAndToYou, toYou, unansweredGoesOn } from '../words/set'
import { AlertAnswers } from './answers'
import { Count } from './count'
import { HandDirectly } from './hand-over'
import { openAlert } from './open-alert'
import { useSet } from './set-context'
import { useOverBoard } from './use-over-board'

/** Over whatever is open: one action, its owner, its deadline. It goes when somebody answers. */
export function AlertBand() {
  const { snapshot, session, me, now, clock, nameOf } = useSet()
  const alert = openAlert(snapshot, me)
  const box = useOverBoard(alert?.call)
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
        <span>{mine ? toYou : toAndToYou(nameOf(alert.owner))}</span>
        <span>{silent ? takeRollsSilent : clock(now)}</span>
      </p>
      <p className="alert-do">{alert.action}</p>
      <p className="lb">{now >= alert.deadline ? itWasDue(clock(alert.deadline)) : byIn(clock(alert.deadline))}</p>
      <Count at={alert.deadline} now={now} />
      <div className="foot">
        <AlertAnswers call={alert.call} />
        <HandDirectly key={alert.call} call={alert.call} />
        <p className="fine">{mine ? unansweredGoesOn : seesTo(nameOf(alert.owner))}</p>
      </div>
    </div>
  )
}
