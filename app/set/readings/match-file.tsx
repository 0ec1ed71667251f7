'use client'
import { useMemo, useState } from 'react'
import { entryOf, type Role } from '@/lib/log/logger-readings'
import { type Instant, instant } from '@/lib/units'
import { anotherFile, putIntoLog, rowsWords, sentSoFar, whichColumnIsWhat } from '../../words/readings'
import { httpWire } from '../feed/http-wire'
import { useSet } from '../set-context'
import { ColumnMatch } from './column-match'
import { ShapeQuestions, TimeQuestions } from './file-questions'
import { Preview } from './preview'
import { countOf, NONE_SENT, type SentSoFar, sendEntries } from './send-entries'
import { useLoggerFile } from './use-logger-file'
import { readingsWord } from './words'

const DAYS_BEFORE_MS = 3 * 86_400_000
const AHEAD_MS = 60_000

export interface ChosenFile {
  readonly name: string
  readonly text: string
  /** Clocks move on; a file is judged by when it was chosen, so that a large one is read once. */
  readonly at: Instant
}
interface Props {
  readonly shootId: string
  readonly date: string
  readonly chosen: ChosenFile
  readonly close: () => void
}

/** A logger's file: what its columns are, what that makes, and into the log. */
export default function MatchFile({ shootId, date, chosen, close }: Props) {
  const { session, facts, units, feed } = useSet()
  const within = useMemo(() => {
    const from = Math.min(chosen.at, Date.parse(`${date}T00:00:00Z`)) - DAYS_BEFORE_MS
    return { from: instant(from), to: instant(chosen.at + AHEAD_MS) }
  }, [chosen.at, date])
  const { table, asked, fault, read, reshape, rematch, unitOf } = useLoggerFile(
    chosen.text,
    { date, zone: facts.zone },
    within,
    units === 'us' ? 'F' : 'C',
  )
  const [sofar, setSofar] = useState<SentSoFar>(NONE_SENT)
  const [state, setState] = useState<'asking' | 'sending' | 'sent'>('asking')
  const send = async () => {
    setState('sending')
    setSofar(NONE_SENT)
    const entries = (read?.readings ?? []).map((reading) => entryOf(shootId, reading))
    setSofar(await sendEntries(httpWire(shootId), entries, () => feed.now(), setSofar))
    setState('sent')
  }
  const count = read?.readings.length ?? 0
  const changing = (change: Parameters<typeof rematch>[0]) => {
    setState('asking')
    rematch(change)
  }
  const reshaping = (change: Parameters<typeof reshape>[0]) => {
    setState('asking')
    reshape(change)
  }
  const setRole = (column: number, role: Role) => {
    // One column is the time: the former one is let go.
    const roles = asked.match.roles.map((one, i) => {
      if (i === column) return role
      return (role.as === 'time' || role.as === 'date') && one.as === role.as ? ({ as: 'ignored' } as const) : one
    })
    changing({ roles })
  }
  return (
    <div>
      <p className="file-line">
        <b>{chosen.name}</b>
        {rowsWords(table.rows.length)}{' '}
        <button type="button" className="textlink" onClick={close}>
          {anotherFile}
        </button>
      </p>
      <ShapeQuestions shape={asked.shape} reshape={reshaping} />
      <h3>{whichColumnIsWhat}</h3>
      <ColumnMatch
        table={table}
        roles={asked.match.roles}
        cooks={session.day.cooks.map(({ id }) => id)}
        unitOf={unitOf}
        onChange={setRole}
      />
      <TimeQuestions table={table} match={asked.match} rematch={changing} />
      {fault && (
        <p className="conflict" role="status">
          {fault}
        </p>
      )}
      {read && <Preview read={read} zone={asked.match.zone} />}
      <p>
        <button type="button" className="btn main" disabled={count === 0 || state === 'sending'} onClick={send}>
          {putIntoLog(readingsWord(count))}
        </button>
      </p>
      <Progress state={state} sofar={sofar} count={count} />
    </div>
  )
}

function Progress({ state, sofar, count }: { state: 'asking' | 'sending' | 'sent'; sofar: SentSoFar; count: number }) {
  if (state === 'asking') return null
  const { kept, known, refused, sentence } = sofar
  const rest = count - countOf(sofar)
  const words = [
    `${readingsWord(kept)} put into the log`,
    known > 0 && `${known} ${known === 1 ? 'was' : 'were'} in it already`,
    refused > 0 && `${refused} refused`,
    state === 'sent' && rest > 0 && `${rest} not sent`,
  ].filter(Boolean)
  return (
    <div role="status" className="conflict">
      {state === 'sending' && <progress max={count} value={countOf(sofar)} aria-label={sentSoFar} />}
      <p>
        <b>{words.join(', ')}.</b> {sentence}
      </p>
    </div>
  )
}
