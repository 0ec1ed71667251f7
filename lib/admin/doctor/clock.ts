import { rmSync, statSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { broken, type Finding, look, ok, spanInWords } from './finding'

/** The slate log orders lines by their times; a mark and its reading are seconds apart. */
const NOTICED_MS = 2000
const SET_BACK_MS = 60_000

export function clockAgainst(whose: string, theirs: number, ours = Date.now()): Finding {
  const off = theirs - ours
  const where = `${off > 0 ? 'behind' : 'ahead of'} ${whose}`
  if (Math.abs(off) <= NOTICED_MS) return ok('Clock', `The clock agrees with ${whose}.`)
  return look(
    'Clock',
    `This computer’s clock is ${spanInWords(off)} ${where}.`,
    'Let the system set its clock by the network, on both where they are two.',
  )
}

/** A folder on another computer has that computer's times. */
export function clockOfFolder(folder: string): Finding {
  const file = path.join(folder, `.doctor-${process.pid}`)
  try {
    writeFileSync(file, '')
    return clockAgainst('the disk', statSync(file).mtimeMs)
  } catch {
    return look('Clock', 'The disk’s time cannot be asked, for it takes no file.', 'See what is said of the folder.')
  } finally {
    rmSync(file, { force: true })
  }
}

/** `last`: when the server took in its latest line. */
export function clockAfter(last: number | null, ours = Date.now()): Finding {
  if (last === null) return ok('Clock and log', 'No line is logged yet.')
  const ahead = last - ours
  if (ahead <= SET_BACK_MS) return ok('Clock and log', 'The clock is after the last line of the log.')
  return broken(
    'Clock and log',
    `The last line came in ${spanInWords(ahead)} after what the clock says now: it was set back, or wrong when that line came.`,
    'Set the clock right. Lines keep their order; times of that day may be wrong on the wrap.',
  )
}
