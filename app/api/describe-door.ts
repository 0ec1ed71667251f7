import { body, inPath, inQuery, json, object, refusals, SENDS, shootId, text } from './describe-parts'

const ROW_ID = { type: 'string', pattern: '^[0-9a-f]{12}$' }
const told = (description: string, properties: Record<string, object> = {}) => ({
  200: json(description, object(properties)),
})
const ROLE = { enum: ['owner', 'producer', 'crew', 'viewer', 'device', null] }

/** Who may come in, by what, and how that ends. */
export function doorPaths() {
  return {
    '/api/me': {
      get: {
        summary: 'Who asks, as the server knows them; in one shoot by ?shoot=ID',
        parameters: [inQuery('shoot')],
        responses: {
          ...told('Role and person', {
            role: ROLE,
            person: { type: ['object', 'null'], properties: { shoot: text, id: text } },
            crewMode: { type: 'boolean' },
          }),
          ...refusals(),
        },
      },
    },
    '/api/door/sign-in': {
      post: {
        summary: "Sign in with the owner's passphrase; the answer sets a cookie",
        requestBody: body('SignIn'),
        responses: { ...told('Signed in'), ...refusals(...SENDS, 'wrong-passphrase') },
      },
    },
    '/api/door/passphrase': {
      post: {
        summary: 'Choose the passphrase: the first at this computer only, another with the one that holds',
        requestBody: body('NewPassphrase'),
        responses: {
          ...told('Chosen, and signed in'),
          ...refusals(...SENDS, 'wrong-passphrase', 'door-invalid', 'not-at-this-computer'),
        },
      },
    },
    '/api/door/carry': {
      post: {
        summary: 'A code for once that opens the same over the trusted line',
        responses: { ...told('The code', { code: { type: ['string', 'null'] } }), ...refusals('foreign-origin') },
      },
    },
    '/api/door/sign-out': {
      post: {
        summary: "End this browser's session",
        responses: { ...told('Signed out'), ...refusals('foreign-origin') },
      },
    },
    '/api/door/join': {
      post: {
        summary: 'Come in by the code of a crew link; the answer sets a cookie',
        requestBody: body('Join'),
        responses: { ...told('Where to go', { to: text }), ...refusals(...SENDS, 'wrong-code') },
      },
    },
    '/api/shoots/{id}/links': {
      parameters: [shootId()],
      post: {
        summary: "Make or renew one person's crew link; its code is in this answer and nowhere else",
        requestBody: body('NewLink'),
        responses: {
          ...told('The link and its code', {
            link: object({ id: text, person: text, role: text, expires: { type: 'integer' } }),
            url: text,
            calendar: text,
          }),
          ...refusals(...SENDS, 'not-found', 'door-invalid'),
        },
      },
    },
    '/api/shoots/{id}/links/{linkId}': {
      parameters: [shootId(), inPath('linkId', ROW_ID)],
      delete: {
        summary: 'Shut a person out',
        responses: { ...told('Done'), ...refusals('foreign-origin', 'not-found') },
      },
    },
    '/api/shoots/{id}/cookers': {
      parameters: [shootId()],
      post: {
        summary: "Keep what a cook of this shoot's log taught of its cooker, under the cooker's name",
        requestBody: body('NewLesson'),
        responses: {
          ...told('The cooker', { cooker: text, name: text }),
          ...refusals(...SENDS, 'not-found', 'door-invalid'),
        },
      },
    },
    '/api/shoots/{id}/cookers/{cookerId}': {
      parameters: [shootId(), inPath('cookerId', { type: 'string', pattern: '^[0-9a-f]{16}$' })],
      post: {
        summary: 'Forget what was learnt of a cooker, or take that back',
        requestBody: body('Forgotten'),
        responses: { ...told('Done'), ...refusals(...SENDS, 'not-found', 'door-invalid', 'cooker-as-it-was') },
      },
    },
    '/api/shoots/{id}/keys': {
      parameters: [shootId()],
      post: {
        summary: "Make a device's key for readings; its secret is in this answer and nowhere else",
        requestBody: body('NewKey'),
        responses: {
          201: json('The key', object({ id: text, name: text, secret: text })),
          ...refusals(...SENDS, 'not-found', 'door-invalid'),
        },
      },
    },
    '/api/shoots/{id}/keys/{keyId}': {
      parameters: [shootId(), inPath('keyId', ROW_ID)],
      delete: { summary: 'Revoke a key', responses: { ...told('Done'), ...refusals('foreign-origin', 'not-found') } },
    },
  }
}

/** How a request shows who sends it; asked for only with --crew. */
export const SECURITY_SCHEMES = {
  session: { type: 'apiKey', in: 'cookie', name: 'emberslate', description: 'Over TLS "__Host-emberslate".' },
  deviceKey: {
    type: 'http',
    scheme: 'bearer',
    description: 'Sends readings to the log of one shoot and nothing else.',
  },
}
