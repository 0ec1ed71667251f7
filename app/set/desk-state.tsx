'use client'
import { agoWords, countSpoken } from '@/lib/session/board-words'
import { formatTemp } from '@/lib/units'
import { useFoodClocks } from './food-line'
import { sensorName } from './probes'
import { useSet } from './set-context'

/** Alerts nobody has seen to, and troubles with what to do about them. */
export function DeskAlerts() {
  const { session, clock, now, nameOf } = useSet()
  const alerts = Object.values(session.alerts)
    .filter(({ state }) => state !== 'done')
    .sort((a, b) => a.deadline - b.deadline)
  const troubles = session.forecast?.troubles ?? []
  return (
    <section aria-label="Alerts">
      <h2>Alerts</h2>
      {alerts.length + troubles.length === 0 && <p>None is open.</p>}
      {alerts.map((alert) => (
        <div key={alert.id} className="conflict">
          <p className="way">{alert.action}</p>
          <p>
            {nameOf(alert.owner)}, by {clock(alert.deadline)} ({countSpoken(alert.deadline, now)}),{' '}
            {alert.state === 'acknowledged' ? 'acknowledged' : 'not answered yet'}
            {alert.asked.length > 1 && `; asked before: ${alert.asked.slice(0, -1).map(nameOf).join(', ')}`}
          </p>
        </div>
      ))}
      {troubles
        .filter(({ id, cook }) => !session.alerts[`trouble/${cook}/${id}`])
        .map((trouble) => (
          <div key={`${trouble.cook} ${trouble.id}`} className="conflict">
            <p className="way">{trouble.action}</p>
            <p>
              {trouble.cook}, by {clock(trouble.deadline)}
            </p>
          </div>
        ))}
    </section>
  )
}

/** Each probe with what it said last and how long ago. */
export function DeskProbes() {
  const { session, now, units } = useSet()
  const probes = Object.values(session.told.probes)
  const many = session.day.cooks.length > 1
  return (
    <section aria-label="Probes">
      <h2>Probes and cooker</h2>
      {probes.length === 0 && <p>Nothing has been read yet.</p>}
      <ul className="desk-list">
        {probes.map((probe) => (
          <li key={`${probe.cook} ${probe.sensor}`}>
            <b>
              {many && `${probe.cook}: `}
              {sensorName(probe.sensor)}
            </b>
            <span className="time">{probe.last ? formatTemp(probe.last.temp, units, 1) : '–'}</span>
            <span>{probe.last && agoWords(probe.last.at, now)}</span>
            <span>{probe.wrong ? 'declared wrong' : probe.out ? 'out of the meat' : ''}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

export function DeskFood() {
  const { clock } = useSet()
  const foods = useFoodClocks()
  return (
    <section aria-label="Food">
      <h2>Food</h2>
      <ul className="desk-list">
        {foods.map(({ food, is, since, discardAt, past }) => (
          <li key={food}>
            <b>{food}</b>
            <span>
              {is.replace('-', ' ')}
              {since !== null && ` since ${clock(since)}`}
            </span>
            <span>
              {discardAt !== null && (past ? 'throw it away now' : `until ${clock(discardAt)} at the latest`)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}
