/** A spreadsheet takes a cell that begins so for a formula. [OWASP, CSV Injection] */
const FORMULA = /^[=+\-@\t\r]/

/** Rows as comma-separated values (RFC 4180): lines end in CRLF, quotes are doubled, nothing runs as a formula. */
export const csvOf = (rows: readonly (readonly string[])[]) =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')

function cell(value: string): string {
  const safe = FORMULA.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
