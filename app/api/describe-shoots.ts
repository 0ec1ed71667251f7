import {
  body,
  bytesBody,
  file,
  inPath,
  inQuery,
  json,
  object,
  ref,
  refusals,
  SENDS,
  shootId,
  text,
  WRITES,
} from './describe-parts'

const BINARY = { type: 'string', format: 'binary' }

/** Shoots as documents: saved, taken back, taken out and in. */
export function shootPaths() {
  const saved = json('The shoot as it stands', ref('SavedShoot'))
  return {
    '/api/shoots': {
      get: { summary: 'All shoots', responses: { 200: json('The list', ref('ShootList')), ...refusals() } },
      post: {
        summary: 'Save a new shoot',
        requestBody: body('NewShoot'),
        responses: { 201: saved, ...refusals(...WRITES, 'invalid', 'disk-refused') },
      },
    },
    '/api/shoots/{id}': {
      parameters: [shootId()],
      get: { summary: 'One shoot', responses: { 200: saved, ...refusals('not-found') } },
      put: {
        summary: 'Save a changed shoot as its next version',
        requestBody: body('ChangedShoot'),
        responses: { 200: saved, ...refusals(...WRITES, 'not-found', 'stale', 'invalid', 'disk-refused') },
      },
    },
    '/api/shoots/{id}/undo': {
      parameters: [shootId()],
      post: {
        summary: 'Take the last change back, as a new version',
        requestBody: body('Undo'),
        responses: { 200: saved, ...refusals(...WRITES, 'not-found', 'nothing-to-undo', 'disk-refused') },
      },
    },
    '/api/shoots/{id}/export': {
      parameters: [shootId()],
      get: { summary: 'The shoot file', responses: { 200: json('The file', ref('Shoot')), ...refusals('not-found') } },
    },
    '/api/shoots/{id}/archive': {
      parameters: [shootId()],
      get: {
        summary: 'The whole shoot as one zip: every version, the log, the forecasts of the day and the photographs',
        responses: {
          200: file('The archive', 'application/zip', BINARY),
          ...refusals('not-found'),
        },
      },
    },
    '/api/shoots/{id}/people/{personId}': {
      parameters: [shootId(), inPath('personId')],
      get: {
        summary: 'Everything that is kept of one person in this shoot, for the owner to hand on',
        responses: {
          200: json(
            'What is kept; README.md says what each part is',
            object({ emberslatePerson: { const: 1 }, shoots: { type: 'array', items: { type: 'object' } } }),
          ),
          ...refusals('not-found'),
        },
      },
    },
    '/api/archives/{upload}': {
      parameters: [
        { name: 'upload', in: 'path', required: true, schema: { type: 'string', pattern: '^[A-Za-z0-9_-]{8,64}$' } },
      ],
      put: {
        summary:
          'Add a piece of an archive, at most 8 MB, that begins "from" bytes into it; sent twice it is there once',
        parameters: [{ name: 'from', in: 'query', required: true, schema: { type: 'integer', minimum: 0 } }],
        requestBody: bytesBody('application/octet-stream'),
        responses: {
          200: json('How many bytes are here', object({ here: { type: 'integer', minimum: 0 } })),
          ...refusals('foreign-origin', 'archive-invalid', 'too-large', 'disk-refused'),
        },
      },
    },
    '/api/archives': {
      post: {
        summary: 'Take in the archive whose pieces are here, under its own id, or as a copy beside a shoot that has it',
        requestBody: body('TakeIn'),
        responses: {
          200: json('It was here before', ref('TakenIn')),
          201: json('It is here now', ref('TakenIn')),
          ...refusals(...SENDS, 'archive-invalid', 'already-here', 'disk-refused'),
        },
      },
    },
    '/api/shoots/{id}/samples': {
      parameters: [shootId()],
      get: {
        summary: 'Joint moments and probe of every cook as bytes, for trying a day out in a browser',
        responses: {
          200: file('As `lib/day/forecast-bytes.ts` packs them', 'application/octet-stream', BINARY),
          ...refusals('not-found', 'invalid'),
        },
      },
    },
    '/api/shoots/{id}/calls.ics': {
      parameters: [
        shootId(),
        inQuery('person'),
        inQuery('key', text, 'The calendar key of a crew link, in place of a session; opens that person’s calls only.'),
      ],
      get: {
        summary: 'The calls as a calendar (iCalendar), of the whole shoot or of one person',
        responses: {
          200: file('The calendar', 'text/calendar'),
          ...refusals('not-found', 'invalid'),
        },
      },
    },
  }
}
