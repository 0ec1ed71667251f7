'use client'
import { useDeferredValue, useMemo, useState } from 'react'
import { type Match, matchFault, type ReadFile, type Role, readFile, type Within } from '@/lib/log/logger-readings'
import { guessShape, guessTime, guessUnit, type LoggerTable, type TableShape, tableOf } from '@/lib/log/logger-table'
import { knownZone } from '@/lib/plan/clock'

/** All that is asked about a file; a text as it is typed. */
export interface Asked {
  readonly shape: TableShape
  readonly match: Match
}
export interface LoggerFile {
  readonly name: string
  readonly table: LoggerTable
  readonly asked: Asked
  readonly fault: string | null
  readonly read: ReadFile | null
}

/** Denser than this no forecast gains from. [estimate] */
const ENOUGH_S = 30
const DENSE = 3000

export function useLoggerFile(shoot: { date: string; zone: string }, within: Within, usual: 'C' | 'F') {
  const [file, setFile] = useState<{ name: string; text: string } | null>(null)
  const [asked, setAsked] = useState<Asked | null>(null)
  const shape = asked?.shape ?? null
  const table = useMemo(() => (file && shape ? tableOf(file.text, shape) : null), [file, shape])
  const match = useDeferredValue(asked?.match ?? null)
  const fault = match && (matchFault(match) ?? zoneFault(match.zone))
  const { from, to } = within
  const read = useMemo(
    () => (table && match && !fault ? readFile(table, match, { from, to }) : null),
    [table, match, fault, from, to],
  )
  const open = (name: string, text: string) => {
    const shape = guessShape(text)
    setFile({ name, text })
    setAsked({ shape, match: guessMatch(tableOf(text, shape), shape, shoot) })
  }
  return {
    file: file && asked && table ? { name: file.name, table, asked, fault, read } : null,
    open,
    close: () => setFile(null),
    /** Laid out otherwise, the columns are others. */
    reshape: (change: Partial<TableShape>) => {
      if (!file || !asked) return
      const shape = { ...asked.shape, ...change }
      const { decimal } = shape
      const decimalOnly = Object.keys(change).join() === 'decimal'
      const match = decimalOnly ? { ...asked.match, decimal } : guessMatch(tableOf(file.text, shape), shape, shoot)
      setAsked({ shape, match })
    },
    rematch: (change: Partial<Match>) => asked && setAsked({ ...asked, match: { ...asked.match, ...change } }),
    unitOf: (column: number) => (table ? guessUnit(table, column, usual) : usual),
  }
}

const zoneFault = (zone: string) =>
  knownZone(zone) ? null : `There is no time zone “${zone}”. Write one such as Europe/London.`

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
