import 'server-only'
import { BorderError } from '../border-error'
import { RateLimit } from './rate-limit'

/** How often is common practice, no source: a person never meets these, a program that guesses does. */
const makeLimits = () => ({
  signIn: new RateLimit(8, 60_000),
  signInOfAll: new RateLimit(60, 10_000),
  join: new RateLimit(30, 2000),
  joinOfAll: new RateLimit(300, 200),
  write: new RateLimit(300, 100),
})
const shared = globalThis as { emberslateLimits?: ReturnType<typeof makeLimits> }
const limits = () => {
  shared.emberslateLimits ??= makeLimits()
  return shared.emberslateLimits
}

function refuse(waitS: number): void {
  if (waitS === 0) return
  const sentence = `That was tried too often. Wait ${waitS} s, then try again.`
  throw new BorderError('too-often', { sentence, retryAfterS: waitS })
}

/** A sign-in from an address. Guessing from elsewhere must not shut out who sits at the computer itself. */
export function countSignIn(peer: string, atThisComputer: boolean): void {
  refuse(limits().signIn.take(peer))
  if (!atThisComputer) refuse(limits().signInOfAll.take('all'))
}
export function countJoin(peer: string): void {
  refuse(limits().join.take(peer))
  refuse(limits().joinOfAll.take('all'))
}
/** A write by a session or key; every owner's write at his own computer without --crew is free. */
export function countWrite(by: string | null): void {
  if (by !== null) refuse(limits().write.take(by))
}
