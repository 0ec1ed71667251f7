import { file, inQuery, refusals, shootId } from './describe-parts'

const BINARY = { type: 'string', format: 'binary' }
const DAY = inQuery('day', { enum: ['rehearsed'] }, 'The day that the rehearsal invents, in place of the logged one.')
const CLIP = inQuery('clip', { type: 'string', pattern: '^[a-z0-9][a-z0-9-]{0,39}$' })
const SIZE = inQuery('size', { type: 'string', pattern: '^\\d{3,4}x\\d{3,4}$', examples: ['1920x1080'] })
const paper = (...sizes: readonly string[]) => inQuery('paper', { enum: sizes })
const SHEET = paper('A4', 'Letter')

/** A file that is made of a shoot as it stands. */
const made = (summary: string, type: string, schema: object | undefined, ...parameters: readonly object[]) => ({
  parameters: [shootId('shootId'), ...parameters],
  get: { summary, responses: { 200: file(summary, type, schema), ...refusals('not-found', 'invalid') } },
})
const pdf = (summary: string, ...parameters: readonly object[]) =>
  made(summary, 'application/pdf', BINARY, ...parameters)
const written = (summary: string, type: string, ...parameters: readonly object[]) =>
  made(summary, type, undefined, ...parameters)

/** Sheets, card and cutting files, beside the pages that offer them. */
export const filePaths = () => ({
  '/shoots/{shootId}/card.pdf': pdf('The card on paper', paper('A4', 'Letter', 'small')),
  '/shoots/{shootId}/call-sheet.pdf': pdf('The call sheet', SHEET),
  '/shoots/{shootId}/prep-list.pdf': pdf('The prep list', SHEET),
  '/shoots/{shootId}/risk-sheet.pdf': pdf('The risk sheet', SHEET),
  '/shoots/{shootId}/card.md': written('The card as Markdown', 'text/markdown'),
  '/shoots/{shootId}/card.txt': written('The card as text', 'text/plain'),
  '/shoots/{shootId}/card.json': made('The recipe by schema.org', 'application/ld+json', { type: 'object' }),
  '/shoots/{shootId}/description.txt': written('What stands under the film', 'text/plain', DAY),
  '/shoots/{shootId}/edit/chapters.vtt': written('The chapters of the film', 'text/vtt', DAY),
  '/shoots/{shootId}/edit/captions.vtt': written('The captions of the film', 'text/vtt', DAY),
  '/shoots/{shootId}/edit/takes.csv': written('The best takes as a table', 'text/csv', DAY),
  '/shoots/{shootId}/edit/overlay.svg': written(
    'The overlay at the middle of a clip',
    'image/svg+xml',
    DAY,
    CLIP,
    SIZE,
  ),
  '/shoots/{shootId}/edit/overlay.zip': made(
    'A PNG for each frame of a clip',
    'application/zip',
    BINARY,
    DAY,
    CLIP,
    SIZE,
  ),
  '/trust/set.crt': {
    get: {
      summary: 'The certificate that phones install once',
      responses: { 200: file('The certificate', 'application/x-x509-ca-cert', BINARY), ...refusals('not-found') },
    },
  },
})
