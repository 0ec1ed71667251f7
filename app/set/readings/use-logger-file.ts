'use client'
import { useDeferredValue, useMemo, useState } from 'react'
import { type Match, matchFault, type Role, readFile, type Within } from '@/lib/log/logger-readings'
import { guessShape, guessTime, guessUnit, type LoggerTable, type TableShape, tableOf } from '@/lib/log/logger-table'
import { knownZone } from '@/lib/plan/clock'
import { thereIsNoTimeZone } from '../../words/readings'

/** All that is asked about a file; a text as it is typed. */
export interface Asked {
  readonly shape: TableShape
  readonly match: Match
}

/** Denser than this no forecast gains from. [estimate] */
const ENOUGH_S = 30
const DENSE = 3000

export function useLoggerFile(text: string, shoot: { date: string; zone: string }, within: Within, usual: 'C' | 'F') {
  const [asked, setAsked] = useState<Asked>(() => {
    const shape = guessShape(text)
    return { shape, match: guessMatch(tableOf(text, shape), shape, shoot) }
  })
  const { shape } = asked
  const table = useMemo(() => tableOf(text, shape), [text, shape])
  const match = useDeferredValue(asked.match)
  const fault = matchFault(match) ?? zoneFault(match.zone)
  const { from, to } = within
  const read = useMemo(() => (fault ? null : readFile(table, match, { from, to })), [table, match, fault, from, to])
  return {
    table,
    asked,
    fault,
    read,
    /** Laid out otherwise, the columns are others. */
    reshape: (change: Partial<TableShape>) => {
      const shape = { ...asked.shape, ...change }
      const { decimal } = shape
      const decimalOnly = Object.keys(change).join() === 'decimal'
      const match = decimalOnly ? { ...asked.match, decimal } : guessMatch(tableOf(text, shape), shape, shoot)
      setAsked({ shape, match })
    },
    rematch: (change: Partial<Match>) => setAsked({ ...asked, match: { ...asked.match, ...change } }),
    unitOf: (column: number) => guessUnit(table, column, usual),
  }
}

const zoneFault = (zone: string) => (knownZone(zone) ? null : thereIsNoTimeZone(zone))

/** Only the time is guessed: which probe is which a person says. */
function guessMatch(table: LoggerTable, shape: TableShape, { date, zone }: { date: string; zone: string }): Match {
  const guess = guessTime(table)
  const roles = table.names.map(
    (_, i): Role => ({
      as: i === guess.time ? 'time' : i === guess.date ? 'date' : 'ignored',
    }),
  )
  const everyS = table.rows.length > DENSE ? ENOUGH_S : 0
  return { roles, form: guess.form, order: guess.order, decimal: shape.decimal, zone, date, start: '', everyS }
}
