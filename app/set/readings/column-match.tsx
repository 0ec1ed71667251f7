'use client'
import type { Role } from '@/lib/log/logger-readings'
import type { LoggerTable } from '@/lib/log/logger-table'
import {
  columnWords,
  date,
  firstValues,
  isWords,
  leftOut,
  ofWords,
  time,
  unitOfWords,
  unitWords,
  whatIs,
} from '../../words/readings'

const SENSORS = ['core', 'core-2', 'core-3', 'core-4', 'cooker', 'cooker-2', 'cooker-3', 'air'] as const

interface Props {
  readonly table: LoggerTable
  readonly roles: readonly Role[]
  readonly cooks: readonly string[]
  readonly unitOf: (column: number) => 'C' | 'F'
  readonly onChange: (column: number, role: Role) => void
}

/** Each column of the file with its first cells, and what the person says it is. */
export function ColumnMatch({ table, roles, cooks, unitOf, onChange }: Props) {
  return (
    <table className="columns">
      <thead>
        <tr>
          <th scope="col">{columnWords}</th>
          <th scope="col">{firstValues}</th>
          <th scope="col">{isWords}</th>
          <th scope="col">{unitWords}</th>
        </tr>
      </thead>
      <tbody>
        {table.names.map((name, i) => {
          const role = roles[i] ?? { as: 'ignored' }
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a column is where it stands; two may have one name.
            <tr key={i}>
              <th scope="row">{name}</th>
              <td className="samples">
                {table.rows
                  .slice(0, 3)
                  .map(({ cells }) => cells[i])
                  .join('  ·  ')}
              </td>
              <td>
                <select
                  className="cell-input"
                  aria-label={whatIs(name)}
                  value={wordOf(role)}
                  onChange={(event) => onChange(i, roleOf(event.target.value, unitOf(i)))}
                >
                  <option value="ignored">{leftOut}</option>
                  <option value="time">{time}</option>
                  <option value="date">{date}</option>
                  {cooks.map((cook) => (
                    <optgroup key={cook} label={cook}>
                      {SENSORS.map((sensor) => (
                        <option key={sensor} value={`${cook}/${sensor}`}>
                          {sensor.replace('-', ' ')}
                          {cooks.length > 1 && ofWords(cook)}
                        </option>
                      ))}
                    </optgroup>
                  ))}
                </select>
              </td>
              <td>
                {role.as === 'temp' && (
                  <select
                    className="cell-input"
                    aria-label={unitOfWords(name)}
                    value={role.unit}
                    onChange={(event) => onChange(i, { ...role, unit: event.target.value as 'C' | 'F' })}
                  >
                    <option value="C">°C</option>
                    <option value="F">°F</option>
                  </select>
                )}
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

const wordOf = (role: Role) => (role.as === 'temp' ? `${role.cook}/${role.sensor}` : role.as)
function roleOf(word: string, unit: 'C' | 'F'): Role {
  const [cook, sensor] = word.split('/')
  if (cook && sensor) return { as: 'temp', cook, sensor, unit }
  return { as: word as 'ignored' | 'time' | 'date' }
}
