import { z } from 'zod'
import { quoted } from './nearest'

/** A day as a person writes it, "2027-05-15"; `example` is shown where it is wrong. */
export const date = (what = 'date', example = '2027-05-15') =>
  z
    .string({ error: (issue) => wrongDate(issue.input, what, example) })
    .check(z.refine((written) => dateExists(written), { error: (issue) => wrongDate(issue.input, what, example) }))
    .meta({ format: 'date' })

function dateExists(written: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(written)?.map(Number) ?? []
  if (year === undefined || month === undefined || day === undefined || year < 1970 || year > 2200) return false
  return month >= 1 && month <= 12 && day >= 1 && day <= new Date(Date.UTC(year, month, 0)).getUTCDate()
}

function wrongDate(written: unknown, what: string, example: string): string {
  if (written === undefined) return `The ${what} is missing here. Write year, month and day, "${example}".`
  const shaped = typeof written === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(written)
  return shaped
    ? `There is no ${written} in the calendar of 1970 to 2200. Write a date that exists, "${example}".`
    : `${quoted(written)} is not a date. Write year, month and day, "${example}".`
}
