'use client'
import { wipe } from '../words/sheets'

const ROWS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0'] as const

interface KeypadProps {
  readonly onPress: (key: string) => void
  readonly onSave: () => void
  /** What the filled key says. */
  readonly save: string
}

/** Digits for a thumb. */
export function Keypad({ onPress, onSave, save }: KeypadProps) {
  const key = (name: string, words: string, label?: string) => (
    <button key={name} type="button" aria-label={label} onClick={() => onPress(name)}>
      {words}
    </button>
  )
  return (
    <div className="key">
      {ROWS.map((digit) => key(digit, digit, digit === '.' ? 'point' : undefined))}
      {key('sign', '−', 'minus')}
      <button type="button" className="key-word" onClick={() => onPress('wipe')}>
        {wipe}
      </button>
      <button type="button" className="key-save" onClick={onSave}>
        {save}
      </button>
    </div>
  )
}
