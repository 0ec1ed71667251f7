'use client'
import { agoWords, countSpoken } from '@/lib/session/board-words'
import { formatTemp } from '@/lib/units'
import {
  acknowledged,
  alertsWords,
  askedBefore,
  by,
  byWords,
  foodWords,
  noneIsOpen,
  notAnsweredYet,
  nothingHasBeenReadYet,
  outOfMeat,
  probesAndCooker,
  probesWords,
  readsWrong,
  sinceWords,
  throwItAwayNow,
  untilAtLatest,
} from '../words/desk'
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
    <section aria-label={alertsWords}>
      <h2>{alertsWords}</h2>
      {alerts.length + troubles.length === 0 && <p>{noneIsOpen}</p>}
      {alerts.map((alert) => (
        <div key={alert.id} className="conflict">
          <p className="way">{alert.action}</p>
          <p>
            {by(nameOf(alert.owner), clock(alert.deadline), countSpoken(alert.deadline, now))}{' '}
            {alert.state === 'acknowledged' ? acknowledged : notAnsweredYet}
            {alert.asked.length > 1 && askedBefore(alert.asked.slice(0, -1).map(nameOf).join(', '))}
          </p>
        </div>
      ))}
      {troubles
        .filter(({ id, cook }) => !session.alerts[`trouble/${cook}/${id}`])
        .map((trouble) => (
          <div key={`${trouble.cook} ${trouble.id}`} className="conflict">
            <p className="way">{trouble.action}</p>
            <p>{byWords(trouble.cook, clock(trouble.deadline))}</p>
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
    <section aria-label={probesWords}>
      <h2>{probesAndCooker}</h2>
      {probes.length === 0 && <p>{nothingHasBeenReadYet}</p>}
      <ul className="desk-list">
        {probes.map((probe) => (
          <li key={`${probe.cook} ${probe.sensor}`}>
            <b>
              {many && `${probe.cook}: `}
              {sensorName(probe.sensor)}
            </b>
            <span className="time">{probe.last ? formatTemp(probe.last.temp, units, 1) : '–'}</span>
            <span>{probe.last && agoWords(probe.last.at, now)}</span>
            <span>{probe.wrong ? readsWrong : probe.out ? outOfMeat : ''}</span>
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
    <section aria-label={foodWords}>
      <h2>{foodWords}</h2>
      <ul className="desk-list">
        {foods.map(({ food, is, since, discardAt, past }) => (
          <li key={food}>
            <b>{food}</b>
            <span>
              {is.replace('-', ' ')}
              {since !== null && sinceWords(clock(since))}
            </span>
            <span>{discardAt !== null && (past ? throwItAwayNow : untilAtLatest(clock(discardAt)))}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}
