'use client'
import type { MomentId } from '@/lib/model/moment-ids'
import { type Duty, dutiesOf, nextDuty } from '@/lib/session/board-view'
import { countParts, countSpoken } from '@/lib/session/board-words'
import type { Session } from '@/lib/session/session'
import { formatTemp, type UnitSystem } from '@/lib/units'
import { comesAt, inWords, nothingMoreToday, presentersLine } from '../words/desk'
import { openAlert } from './open-alert'
import { useSet } from './set-context'
import { useGround } from './use-ground'

/** One line to be read at three metres, and nothing else. Shown to whoever the phone belongs to, else to the presenter. */
export function Presenter() {
  const { session, snapshot, facts, me, now, clock, nameOf, units } = useSet()
  useGround()
  const person = me ?? facts.people.find(({ roles }) => roles.includes('presenter'))?.id ?? facts.people[0]?.id ?? ''
  const duty = nextDuty(dutiesOf(session, facts, person), now)
  const alert = openAlert(snapshot, me)
  const window = duty?.moment?.window
  return (
    <main id="main" className="presenter">
      <h1 className="sr-only">{presentersLine}</h1>
      <div className="pr-bar">
        <span>{nameOf(person)}</span>
        {window?.likely && window.early && window.late && (
          <span>{comesAt(clock(window.likely), clock(window.early), clock(window.late))}</span>
        )}
        <span className="time">{clock(now)}</span>
      </div>
      {alert ? (
        <p className="pr-what long">{alert.action}</p>
      ) : duty ? (
        <Line duty={duty} or={orAt(session, duty, units)} />
      ) : (
        <p className="pr-what">{nothingMoreToday}</p>
      )}
    </main>
  )
}

/** More letters do not fit across in the large face. */
const LONG = 14
/** To the moment itself where there is one: the presenter speaks of it, the crew stands by for it. */
function Line({ duty, or }: { duty: Duty; or: string }) {
  const { now } = useSet()
  const at = duty.moment?.window.likely ?? duty.until?.at ?? null
  const name = `${duty.moment?.name ?? duty.title}${duty.moment === null && duty.until?.what === 'end' ? ' ends' : ''}`
  if (at === null) return <p className="pr-what">{capital(name)}</p>
  const come = at <= now
  return (
    <>
      <p className={`pr-what ${name.length > LONG ? 'long' : ''}`}>{come ? capital(name) : inWords(capital(name))}</p>
      <div className="pr-when">
        <p className="pr-count" role="timer">
          <span className="sr-only">{countSpoken(at, now)}</span>
          <span aria-hidden="true">
            {countParts(at, now).map(({ text, small }) => (small ? <small key={text}>{text}</small> : text))}
          </span>
        </p>
        {!come && or !== '' && <span className="pr-or">{or}</span>}
      </div>
    </>
  )
}
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** What ends the roast comes as soon as the probe says so. */
const BY_PROBE: readonly MomentId[] = ['vents-open', 'sear-start', 'off-heat']
function orAt({ day }: Session, { id, moment }: Duty, units: UnitSystem): string {
  const call = day.calls.find((one) => one.id === id)
  const cook = day.cooks.find((one) => one.id === call?.cook)
  if (!cook || cook.pullAt === null || moment === null) return ''
  const first = cook.moments.find((one) => BY_PROBE.includes(one))
  return moment.id === 'pull' || moment.id === first ? `or at ${formatTemp(cook.pullAt, units)}` : ''
}
