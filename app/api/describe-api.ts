import { doorPaths, SECURITY_SCHEMES } from './describe-door'
import { filePaths } from './describe-files'
import { logPaths } from './describe-log'
import { flag, json, object, text } from './describe-parts'
import { schemas } from './describe-schemas'
import { shootPaths } from './describe-shoots'
import { tryPaths } from './describe-tries'

const CHECK = object({ name: text, ok: flag, sentence: text }, 'sentence')
const READY = object({ ready: flag, checks: { type: 'array', items: CHECK } })

const aboutPaths = () => ({
  '/healthz': { get: { summary: 'Does it live', responses: { 200: json('It does', object({ ok: flag })) } } },
  '/readyz': {
    get: {
      summary: 'Can it do its work, check by check; the sentences are for who runs it',
      responses: { 200: json('It can', READY), 503: json('It cannot', READY) },
    },
  },
  '/api/openapi.json': {
    get: { summary: 'This document', responses: { 200: json('OpenAPI 3.1', { type: 'object' }) } },
  },
})

const paths = () => ({ ...shootPaths(), ...logPaths(), ...doorPaths(), ...tryPaths(), ...filePaths(), ...aboutPaths() })

/** The HTTP border as an OpenAPI 3.1 document, from the schema that reads shoot files and the table of refusals. */
export const describeApi = () => ({
  openapi: '3.1.0',
  info: {
    title: 'Emberslate',
    version: '1',
    description: 'Every quantity is a string with its unit: "3.2 kg", "325 °F".',
  },
  paths: paths(),
  security: [{}, { session: [] }, { deviceKey: [] }],
  components: { schemas: schemas(), securitySchemes: SECURITY_SCHEMES },
})
