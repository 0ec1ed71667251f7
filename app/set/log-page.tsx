'use client'
import { useState } from 'react'
import { putBack } from '../words/shared'
import {
  correctLine,
  correctWords,
  countsAgain,
  earlierLines,
  nothingIsLoggedYet,
  putRightTag,
  takenBackTag,
  theLog,
  waitsHere,
} from '../words/sheets'
import { CorrectSheet } from './correct-sheet'
import { type LogItem, logItems } from './log-list'
import { type LogNames, logWords } from './log-words'
import { Photo } from './photos/photo'
import { useSet } from './set-context'

export function useLogNames(): LogNames {
  const { session, facts, units, nameOf } = useSet()
  const { cooks } = session.day
  return {
    units,
    shot: (id) => facts.shots[id]?.title ?? id,
    moment: (cook, moment) =>
      Object.entries(cooks.find(({ id }) => id === cook)?.names ?? {}).find(([id]) => id === moment)?.[1] ??
      moment.replaceAll('-', ' '),
    person: nameOf,
    cook: (id) => (cooks.length > 1 ? `${id}: ` : ''),
  }
}

const FIRST = 40
/** Who logged what and when, newest first; each line can be put right. */
export function LogPage({ title: Title = 'h1' }: { title?: 'h1' | 'h2' }) {
  const { session } = useSet()
  const [correcting, setCorrecting] = useState<LogItem | null>(null)
  const [shown, setShown] = useState(FIRST)
  const items = logItems(session)
  return (
    <section aria-label={theLog}>
      <Title className="page-title">{theLog}</Title>
      {items.length === 0 && <p className="do">{nothingIsLoggedYet}</p>}
      <ol className="log">
        {items.slice(0, shown).map((item) => (
          <LogRow key={item.line.entry.id} item={item} correct={() => setCorrecting(item)} />
        ))}
      </ol>
      {items.length > shown && (
        <button type="button" className="textlink" onClick={() => setShown(shown + FIRST)}>
          {earlierLines}
          {items.length - shown})
        </button>
      )}
      {correcting && (
        <CorrectSheet entry={correcting.line.entry} at={correcting.at} close={() => setCorrecting(null)} />
      )}
    </section>
  )
}

function LogRow({ item, correct }: { item: LogItem; correct: () => void }) {
  const { clock, nameOf, log } = useSet()
  const names = useLogNames()
  const { entry } = item.line
  const { voidedBy } = item
  const words = logWords(entry, names)
  const fixed = item.fate === 'void' || entry.kind === 'correction'
  return (
    <li className={`fate-${item.fate}`}>
      <span className="time">{clock(item.at)}</span>
      <span>
        <span className="what">{words}</span>
        <small>
          {entry.by.person ? nameOf(entry.by.person) : entry.by.device}
          {item.fate === 'void' && takenBackTag}
          {item.fate === 'put-right' && putRightTag}
          {item.waits && waitsHere}
        </small>
        {entry.kind === 'note' && entry.photo && item.fate !== 'void' && <Photo name={entry.photo} words={words} />}
      </span>
      {voidedBy && (
        <button
          type="button"
          className="fix"
          onClick={() => log({ kind: 'correction', corrects: voidedBy, void: true }, countsAgain)}
          aria-label={`${putBack}: ${words}`}
        >
          {putBack}
        </button>
      )}
      {!fixed && (
        <button type="button" className="fix" onClick={correct} aria-label={correctLine(words)}>
          {correctWords}
        </button>
      )}
    </li>
  )
}
