import { z } from 'zod'
import { id, list, record, text } from './fields'
import { quoted } from './nearest'

/** What only the producer knows. All of it may be left out: an empty field prints as a line to write on. */

const LEAST_DIGITS = 3
/** A telephone number as people write one: "+353 1 496 0000", "112 or 999"; what is no number has fewer than three digits. */
const phone = (what: string, example: string) =>
  text(what, 40, 1).check(
    z.refine((written) => written.trim() === '' || written.replace(/\D/g, '').length >= LEAST_DIGITS, {
      error: (issue) => `${quoted(issue.input)} is not ${what}. Write its digits, such as "${example}".`,
    }),
  )

const contact = record('a contact', {
  name: text('the name of a contact', 80, 1),
  role: text('the role of a contact', 40, 1).optional(),
  phone: phone('a telephone number', '+353 1 496 0000'),
})

export const CALL_SHEET = record('what the call sheet needs', {
  emergency: phone('an emergency number', '112').optional(),
  hospital: text('the nearest hospital', 160, 1).optional(),
  contacts: list('contacts', contact, 12).optional(),
  allergens: text('the allergens on set', 200, 1).optional(),
  parking: text('where to park', 160, 1).optional(),
  notes: text('the notes', 400, 1).optional(),
})

export const RISK = record('what the risk sheet needs', {
  fireRules: text("today's fire restrictions", 200, 1).optional(),
  responsible: text('the person responsible', 80, 1).optional(),
})

/** Shots and tasks that were offered and not wanted. */
export const COVERAGE = record('the coverage', {
  left: list('shots left out', id('the id of a shot'), 60).optional(),
  tasksLeft: list('tasks left out', id('the id of a task'), 60).optional(),
})
