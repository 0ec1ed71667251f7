import type { CardPaper, Paper } from '@/lib/print/sheet'
import { fileResponse } from './file-response'

export const paperOf = (request: Request): Paper =>
  new URL(request.url).searchParams.get('paper') === 'Letter' ? 'Letter' : 'A4'

export const cardPaperOf = (request: Request): CardPaper =>
  new URL(request.url).searchParams.get('paper') === 'small' ? 'small' : paperOf(request)

export const pdfResponse = (bytes: Uint8Array, name: string): Response =>
  fileResponse(new Uint8Array(bytes), { name: `${name}.pdf`, type: 'application/pdf' })
