import { body, bytesBody, inPath, json, ref, refusals, SENDS, shootId } from './describe-parts'

const since = {
  name: 'since',
  in: 'query',
  required: false,
  schema: { type: 'integer', minimum: 0 },
  description: 'The position after which lines are wanted; none for all.',
}

/** The slate log, its photographs, and the day as screens of the set follow it. */
export function logPaths() {
  const ndjson = { 'application/x-ndjson': { schema: ref('LogLine') } }
  const events = { 'text/event-stream': { schema: { type: 'string' } } }
  const resume = { name: 'Last-Event-ID', in: 'header', required: false, schema: { type: 'integer', minimum: 0 } }
  return {
    '/api/shoots/{id}/log': {
      parameters: [shootId()],
      get: {
        summary: 'The slate log, a line an entry; the header Log-Position holds the position of the last line',
        parameters: [since],
        responses: { 200: { description: 'The log', content: ndjson }, ...refusals('not-found', 'log-invalid') },
      },
      post: {
        summary:
          'Add entries to the slate log, late or out of order as they may be; the same entry sent twice is kept once',
        requestBody: body('Sending'),
        responses: {
          200: json('What became of each entry, by its id', ref('Kept')),
          ...refusals(...SENDS, 'not-found', 'log-invalid', 'disk-refused'),
        },
      },
    },
    '/api/shoots/{id}/photos': {
      parameters: [shootId()],
      post: {
        summary:
          'Keep a photograph of the set, at most 1.5 MB, under the SHA-256 of its bytes; a note names it in "photo"',
        requestBody: bytesBody('image/jpeg', 'image/webp'),
        responses: {
          200: json('It was kept before', ref('KeptPhoto')),
          201: json('It is kept', ref('KeptPhoto')),
          ...refusals(
            'foreign-origin',
            'too-large',
            'photo-unknown',
            'photo-place',
            'photos-full',
            'not-found',
            'disk-refused',
          ),
        },
      },
    },
    '/api/shoots/{id}/photos/{name}': {
      parameters: [shootId(), inPath('name', { type: 'string', pattern: '^[0-9a-f]{64}\\.(jpg|webp)$' })],
      get: {
        summary: 'A photograph; it never changes under its name',
        responses: {
          200: { description: 'The picture', content: bytesBody('image/jpeg', 'image/webp').content },
          ...refusals('not-found', 'photo-not-found'),
        },
      },
    },
    '/api/shoots/{id}/set-day': {
      parameters: [shootId()],
      get: {
        summary: 'All that a screen of the set needs to open, and to forecast alone when it is cut off',
        responses: { 200: json('The day; times are milliseconds', ref('SetDay')), ...refusals('not-found', 'invalid') },
      },
    },
    '/api/shoots/{id}/events': {
      parameters: [shootId()],
      get: {
        summary:
          'The slate log as it grows: events "entry" whose id is the position and whose data is a line of the log. Beside them "forecast" ({ id, at, forecast }: the latest on connecting, then each that is applied) and "day" ({ version }: a new version of the shoot was saved); these have no id, and their times are milliseconds',
        parameters: [since, resume],
        responses: { 200: { description: 'The events', content: events }, ...refusals('not-found', 'log-invalid') },
      },
    },
  }
}
