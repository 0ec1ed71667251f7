'use client'
import { useMemo } from 'react'
import type { Separator } from '@/lib/log/csv'
import type { Match } from '@/lib/log/logger-readings'
import type { LoggerTable, TableShape } from '@/lib/log/logger-table'
import { type DateOrder, isOrderOpen, type TimeForm } from '@/lib/log/logger-times'
import { knownZone } from '@/lib/plan/clock'
import { Field } from '../../ui/field'
import {
  betweenColumns,
  dateOfFirstRow,
  dateOfStart,
  decimalSign,
  namesOfColumns,
  orderOfDate,
  readingsToKeep,
  readingsToKeepWhy,
  thereIsNoSuchZone,
  timeColumnHas,
  timeOfStart,
  timeOfStartWhy,
  zoneOfTimes,
  zoneWhy,
} from '../../words/readings'

const FORMS: readonly (readonly [TimeForm, string])[] = [
  ['date-time', 'date and time'],
  ['clock', 'time of day'],
  ['elapsed-s', 'seconds since the start'],
  ['elapsed-min', 'minutes since the start'],
  ['elapsed-hms', 'h:mm:ss since the start'],
  ['epoch-s', 'seconds since 1970'],
]
const ORDERS = [
  ['dmy', 'day, month, year'],
  ['mdy', 'month, day, year'],
] as const
const EVERY = [
  ['0', 'all'],
  ['10', 'one in 10 s'],
  ['30', 'one in 30 s'],
  ['60', 'one in a minute'],
] as const

interface Props {
  readonly table: LoggerTable
  readonly match: Match
  readonly rematch: (change: Partial<Match>) => void
}

/** What the times of a file mean. */
export function TimeQuestions({ table, match, rematch }: Props) {
  const { form, order, zone, date, start, everyS, roles } = match
  const zones = useMemo(() => Intl.supportedValuesOf('timeZone'), [])
  const isDated = form === 'date-time' || form === 'epoch-s' || roles.some(({ as }) => as === 'date')
  const isElapsed = form.startsWith('elapsed')
  const times = roles.flatMap(({ as }, i) => (as === 'time' || as === 'date' ? [i] : []))
  const isOrderAsked = times.some((i) => isOrderOpen(table.rows[0]?.cells[i] ?? ''))
  return (
    <div className="questions">
      <Field
        label={timeColumnHas}
        value={form}
        options={FORMS}
        onChange={(next) => rematch({ form: next as TimeForm })}
      />
      {isOrderAsked && (
        <Field
          label={orderOfDate}
          value={order}
          options={ORDERS}
          onChange={(next) => rematch({ order: next as DateOrder })}
        />
      )}
      {!isDated && (
        <Field
          label={isElapsed ? dateOfStart : dateOfFirstRow}
          type="date"
          value={date}
          onChange={(next) => rematch({ date: next })}
        />
      )}
      {isElapsed && (
        <Field label={timeOfStart} value={start} onChange={(next) => rematch({ start: next })} why={timeOfStartWhy} />
      )}
      {form !== 'epoch-s' && (
        <Field
          label={zoneOfTimes}
          value={zone}
          suggestions={zones}
          onChange={(next) => rematch({ zone: next })}
          fault={knownZone(zone) ? undefined : thereIsNoSuchZone}
          why={zoneWhy}
        />
      )}
      <Field
        label={readingsToKeep}
        value={String(everyS)}
        options={EVERY}
        onChange={(next) => rematch({ everyS: Number(next) })}
        why={readingsToKeepWhy}
      />
    </div>
  )
}

const SEPARATORS: readonly (readonly [Separator, string])[] = [
  [',', 'comma'],
  [';', 'semicolon'],
  ['\t', 'tab'],
  ['|', 'upright bar'],
]
const HEADS = 30

/** How the file is laid out, as it was guessed. */
export function ShapeQuestions({
  shape,
  reshape,
}: {
  shape: TableShape
  reshape: (change: Partial<TableShape>) => void
}) {
  const lines = Array.from({ length: Math.max(HEADS, shape.head ?? 0) }, (_, i) => [String(i + 1), `in line ${i + 1}`])
  return (
    <div className="questions">
      <Field
        label={betweenColumns}
        value={shape.separator}
        options={SEPARATORS}
        onChange={(next) => reshape({ separator: next as Separator })}
      />
      <Field
        label={decimalSign}
        value={shape.decimal}
        options={[
          ['.', 'point, 46.2'],
          [',', 'comma, 46,2'],
        ]}
        onChange={(next) => reshape({ decimal: next as '.' | ',' })}
      />
      <Field
        label={namesOfColumns}
        value={shape.head === null ? 'none' : String(shape.head)}
        options={[['none', 'none'], ...(lines as [string, string][])]}
        onChange={(next) => reshape({ head: next === 'none' ? null : Number(next) })}
      />
    </div>
  )
}
