import { LARGEST_BYTES, parseShoot, tooLarge } from '@/lib/plan/parse'
import type { Problem } from '@/lib/refusals'
import { previewOf } from '../../shoots/preview-of'

const refuse = (status: number, detail: string, problems: readonly Problem[] = []) =>
  Response.json(
    { status, title: 'This plan cannot be read yet', detail, problems },
    {
      status,
      headers: { 'content-type': 'application/problem+json' },
    },
  )

/** The heat line of a plan that is still being typed. Nothing is kept. */
export async function POST(request: Request) {
  const body = await request.text()
  if (body.length > LARGEST_BYTES) return refuse(413, tooLarge(body.length))
  let document: unknown
  try {
    document = (JSON.parse(body) as { document?: unknown }).document
  } catch {
    return refuse(400, 'This is not whole JSON. Send {"document": …} from its first brace to its last.')
  }
  const parsed = parseShoot(document)
  if (!parsed.ok) return refuse(422, parsed.problems[0]?.sentence ?? '', parsed.problems)
  return Response.json(previewOf(parsed.value))
}
