import { answersTo } from '@/lib/session/calls'
import type { Effect, Session } from '@/lib/session/session'
import type { Raised, SoundAlert } from '../set-feed'

/** What tells a person of an alert. */
export interface Alarm {
  sound(effect: SoundAlert): void
  notify(sentence: string): void
  /** A take rolls: not another sound. */
  hush(): void
}
interface Here {
  readonly alarm: Alarm
  now(): number
  person(): string | null
  /** True once for each key on this device. */
  fire(key: string): Promise<boolean>
}

/** So many of the alerts that came up last are remembered. */
const MOST = 60
/** What came up within this time still makes a noise for who says only now who they are. */
const FRESH_MS = 2 * 60_000

/** The alerts that came up on this device: each makes its noise once, for the person who holds it. */
export class AlertsHere {
  raised: readonly Raised[] = []

  constructor(readonly here: Here) {}

  /** What came up while nobody looked is shown without a noise. */
  take(effects: readonly Effect[], isOld: boolean): void {
    const at = isOld ? this.here.now() - FRESH_MS : this.here.now()
    const alerts = effects.filter((effect): effect is SoundAlert => effect.do === 'sound-alert')
    if (alerts.length > 0) this.raised = [...this.raised, ...alerts.map((effect) => ({ effect, at }))].slice(-MOST)
    for (const effect of alerts) this.#tell(effect, isOld)
    for (const effect of effects) if (effect.do === 'notify') this.#notify(effect)
  }
  /** What came up on the server while this device was not there: shown, and sounded where it is fresh. */
  missed(raised: readonly Raised[]): void {
    const known = new Set(this.raised.map(({ effect }) => effect.key))
    const news = raised.filter(({ effect }) => !known.has(effect.key))
    this.raised = [...this.raised, ...news].slice(-MOST)
    const since = this.here.now() - FRESH_MS
    for (const { effect, at } of news) this.#tell(effect, at <= since)
  }
  /** Somebody says who they are. */
  chosen(): void {
    const since = this.here.now() - FRESH_MS
    for (const { effect, at } of this.raised) this.#tell(effect, at <= since)
  }
  /** The alert that came up last for this person and that nobody has seen to yet. */
  sounding(session: Session): SoundAlert | null {
    const person = this.here.person()
    if (person === null) return null
    return this.raised.findLast((one) => one.effect.to.includes(person) && stands(session, one, person))?.effect ?? null
  }

  #tell(effect: SoundAlert, isOld: boolean): void {
    const person = this.here.person()
    if (person === null || !effect.to.includes(person)) return
    void this.here.fire(effect.key).then((first) => {
      if (first && !isOld) this.here.alarm.sound(effect)
    })
  }
  #notify({ key, to, sentence }: Effect & { readonly do: 'notify' }): void {
    const person = this.here.person()
    if (person === null || !to.includes(person)) return
    void this.here.fire(key).then((first) => first && this.here.alarm.notify(sentence))
  }
}

/** An answer is told by the clock of who gave it, right to a second or two. */
const CLOCKS_MS = 2000
/** This person has not yet seen to it, and it still needs them. */
export function stands(session: Session, { effect, at }: Raised, person: string): boolean {
  const alert = session.alerts[effect.call]
  if (alert) return alert.state === 'open' && alert.owner === person
  const answers = answersTo(session, effect.call).filter((answer) => answer.person === person)
  // Who said that they come has not yet said that they roll.
  if (answers.some((answer) => effect.tone === 'standby' || answer.at > at - CLOCKS_MS)) return false
  return session.calls[effect.call]?.state === effect.tone && !rollsAlready(session, effect.call)
}
function rollsAlready({ day, told }: Session, call: string): boolean {
  const shot = day.calls.find(({ id }) => id === call)?.shot
  return told.takes.some((take) => take.rolling && take.shot === shot)
}
