import { framesOf, overlayFault, overlayRuns } from '@/lib/export/overlay-frames'
import { zipOfFrames } from '@/lib/print/overlay-zip'
import { answer } from '../../../../api/border'
import { drawnBeside } from '../../../../print-pool'
import { openEdit, overlayAsked, refused } from '../../../edit-day'
import { fileResponse } from '../../../file-response'

const PULL_BYTES = 256 * 1024

/** A PNG for each frame of a clip, as it is asked for: no more than a few are ever held. */
export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const query = new URL(request.url).searchParams
    const edit = await openEdit((await params).shootId, query.get('day'))
    const { clip, facts, style } = await overlayAsked(edit, query)
    const fault = overlayFault(clip, facts)
    if (fault !== null || !facts) throw refused('/clips', fault ?? '')
    const { id, rate, start } = clip.clip
    const about = [
      ...edit.notes,
      `Temperature overlay of clip ${id}: ${framesOf(clip)} frames at ${rate}, from timecode ${start}. Lay frame 0 on the clip’s first frame.`,
    ]
    const pieces = zipOfFrames((svgs) => drawnBeside(edit.open.shoot, svgs), {
      name: id,
      runs: overlayRuns(facts, clip, style),
      about: `${about.join('\r\n')}\r\n`,
      at: clip.from,
    })
    return fileResponse(streamOf(pieces), { name: `${edit.shoot.title} ${id} overlay.zip`, type: 'application/zip' })
  })

function streamOf(pieces: AsyncGenerator<Uint8Array, void>): ReadableStream<Uint8Array> {
  return new ReadableStream({
    async pull(stream) {
      // Whoever else asks the server meanwhile has their turn.
      await new Promise<void>((resolve) => setImmediate(resolve))
      for (let bytes = 0; bytes < PULL_BYTES; ) {
        const { value, done } = await pieces.next()
        if (done) return stream.close()
        stream.enqueue(value)
        bytes += value.length
      }
    },
    cancel: () => void pieces.return(undefined),
  })
}
