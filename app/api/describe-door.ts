/** The paths of the door for the OpenAPI document; `refusals` is the table's, so that each says what it refuses. */
type Refusals = (
  ...codes: readonly ('not-found' | 'door-invalid' | 'wrong-code' | 'wrong-passphrase' | 'cooker-as-it-was')[]
) => object

const text = { type: 'string' }
const inPath = (name: string) => ({ name, in: 'path', required: true, schema: text })
const says = (properties: Record<string, object>) => ({
  required: true,
  content: { 'application/json': { schema: { type: 'object', properties, required: Object.keys(properties) } } },
})
const told = (description: string, properties: Record<string, object> = {}) => ({
  200: { description, content: { 'application/json': { schema: { type: 'object', properties } } } },
})
const ROLE = { enum: ['owner', 'producer', 'crew', 'viewer', 'device', null] }

export function doorPaths(refusals: Refusals) {
  return {
    '/api/me': {
      get: {
        summary: 'Who asks, as the server knows them; in one shoot by ?shoot=ID',
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
        requestBody: says({ passphrase: text }),
        responses: { ...told('Signed in'), ...refusals('wrong-passphrase') },
      },
    },
    '/api/door/sign-out': { post: { summary: "End this browser's session", responses: { ...told('Signed out') } } },
    '/api/door/join': {
      post: {
        summary: 'Come in by the code of a crew link; the answer sets a cookie',
        requestBody: says({ code: text }),
        responses: { ...told('Where to go', { to: text }), ...refusals('wrong-code') },
      },
    },
    '/api/shoots/{id}/links': {
      parameters: [inPath('id')],
      post: {
        summary: "Make or renew one person's crew link; its code is in this answer and nowhere else",
        requestBody: says({ person: text, role: { enum: ['crew', 'viewer', 'producer'] } }),
        responses: { ...told('The link and its code', { url: text }), ...refusals('not-found', 'door-invalid') },
      },
    },
    '/api/shoots/{id}/links/{linkId}': {
      parameters: [inPath('id'), inPath('linkId')],
      delete: { summary: 'Shut a person out', responses: { ...told('Done'), ...refusals('not-found') } },
    },
    '/api/shoots/{id}/cookers': {
      parameters: [inPath('id')],
      post: {
        summary: "Keep what a cook of this shoot's log taught of its cooker, under the cooker's name",
        requestBody: says({ cook: text, name: text }),
        responses: { ...told('The cooker', { cooker: text, name: text }), ...refusals('not-found', 'door-invalid') },
      },
    },
    '/api/shoots/{id}/cookers/{cookerId}': {
      parameters: [inPath('id'), inPath('cookerId')],
      post: {
        summary: 'Forget what was learnt of a cooker, or take that back',
        requestBody: says({ forgotten: { type: 'boolean' } }),
        responses: { ...told('Done'), ...refusals('not-found', 'door-invalid', 'cooker-as-it-was') },
      },
    },
    '/api/shoots/{id}/keys': {
      parameters: [inPath('id')],
      post: {
        summary: "Make a device's key for readings; its secret is in this answer and nowhere else",
        requestBody: says({ name: text }),
        responses: { 201: { description: 'The key' }, ...refusals('not-found', 'door-invalid') },
      },
    },
    '/api/shoots/{id}/keys/{keyId}': {
      parameters: [inPath('id'), inPath('keyId')],
      delete: { summary: 'Revoke a key', responses: { ...told('Done'), ...refusals('not-found') } },
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
