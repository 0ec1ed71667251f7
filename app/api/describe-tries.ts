import { body, json, object, ref, refusals, SENDS, text } from './describe-parts'

const list = { type: 'array' }
/** One of those that work something out of a shoot file and keep nothing. */
const tries = (summary: string, sent: string, answer: string, schema: object) => ({
  post: {
    summary: `${summary}; nothing is saved`,
    requestBody: body(sent),
    responses: { 200: json(answer, schema), ...refusals(...SENDS, 'invalid') },
  },
})

export const tryPaths = () => ({
  '/api/forecast': tries(
    'Forecast a shoot file',
    'Forecast',
    'What the command `forecast` prints',
    object({ modelVersion: text, seed: { type: 'integer' }, cooks: list }),
  ),
  '/api/preview': tries(
    'The heat line of a plan that is still being typed',
    'Forecast',
    'What the plan page shows beside the form',
    object({ first: text, second: text, facts: list, warnings: list, conflicts: list }),
  ),
  '/api/gains': tries('What measuring would do for the window at the pull', 'Forecast', 'A sentence for each field', {
    type: 'array',
    items: object({ cook: { type: 'integer', minimum: 0 }, what: text, sentence: text }),
  }),
  '/api/cut-face': tries(
    "The slice of the same cook at another heat, beside the plan's",
    'AnotherHeat',
    'What the plan page shows',
    { type: 'object' },
  ),
  '/api/what-if': tries(
    'A late crew, other weather or a hold beside the plan',
    'WhatIf',
    'Title, lines beside the plan, and the document to adopt',
    object({ title: text, document: ref('Shoot') }, 'document'),
  ),
})
