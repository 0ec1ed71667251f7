'use client'
import { countParts, countSpoken } from '@/lib/session/board-words'
import type { Instant } from '@/lib/units'

/** The large digits. Longer ones are set smaller, never below 105 px of digit on a phone. */
export function Count({ at, now }: { at: Instant; now: Instant }) {
  const parts = countParts(at, now)
  const length = parts.reduce((sum, { text, small }) => sum + (small ? 0.5 : text.length), 0)
  return (
    <p className={`count ${length > 3 ? 'long' : ''}`} role="timer">
      <span className="sr-only">{countSpoken(at, now)}</span>
      <span aria-hidden="true">
        {parts.map(({ text, small }) => (small ? <small key={text}>{text}</small> : <span key={text}>{text}</span>))}
      </span>
    </p>
  )
}
