import type { Metadata } from 'next'
import Link from 'next/link'
import { continuityReport, type SeenGroup } from '@/lib/export/continuity-report'
import { PHOTO_NAME } from '@/lib/log/photo-name'
import { chosenUnits } from '../../../../units'
import { byShot, continuityReportWords, forEdit, nothingNoted, ofNoShot } from '../../../../words/edit'
import { INVENTED } from '../../../day-log'
import { openEdit } from '../../../edit-day'

export const metadata: Metadata = { title: continuityReportWords }
export const dynamic = 'force-dynamic'

type ReportProps = { params: Promise<{ shootId: string }>; searchParams: Promise<{ day?: string | string[] }> }

/** How it looked, to be printed: every note and photograph of the day by shot. */
export default async function ContinuityReportPage({ params, searchParams }: ReportProps) {
  const { shootId } = await params
  const { shoot, day, invented } = await openEdit(shootId, (await searchParams).day)
  const { shots, roasts } = continuityReport(shoot, day, await chosenUnits())
  return (
    <main id="main" className="page">
      <header className="head">
        <Link className="small no-print" href={`/shoots/${shootId}/edit${invented ? '?day=rehearsed' : ''}`}>
          {forEdit}
        </Link>
        <span className="name">{shoot.title}</span>
      </header>
      <h1>{continuityReportWords}</h1>
      {invented && <p className="conflict">{INVENTED}</p>}
      {shots.length + roasts.length === 0 && <p className="lead mt-2">{nothingNoted}</p>}
      {shots.length > 0 && <h2 className="mt-6">{byShot}</h2>}
      {shots.map((group) => (
        <Seen key={group.title} shootId={shootId} group={group} />
      ))}
      {roasts.length > 0 && <h2 className="mt-8">{ofNoShot}</h2>}
      {roasts.map((group) => (
        <Seen key={group.title} shootId={shootId} group={group} />
      ))}
    </main>
  )
}

function Seen({ shootId, group: { title, takes, notes } }: { shootId: string; group: SeenGroup }) {
  return (
    <section aria-label={title} className="mt-6 break-inside-avoid">
      <h3 className="border-b-2 border-ink pb-1">{title}</h3>
      {takes !== '' && <p className="small mt-1">{takes}.</p>}
      {notes.map((note) => (
        <div
          key={note.id}
          className="grid grid-cols-[4rem_1fr] gap-3 border-b border-rule py-2 sm:grid-cols-[4rem_1fr_280px]"
        >
          <span className="time">{note.clock}</span>
          <span>
            {note.text}
            <span className="small block">{note.of}</span>
            {note.facts && <span className="small block">{note.facts}</span>}
          </span>
          {note.photo && PHOTO_NAME.test(note.photo) && (
            // biome-ignore lint/performance/noImgElement: it is small already, and prints as it is
            <img
              className="col-start-2 w-full sm:col-start-3"
              src={`/api/shoots/${shootId}/photos/${note.photo}`}
              alt={note.text}
            />
          )}
        </div>
      ))}
    </section>
  )
}
