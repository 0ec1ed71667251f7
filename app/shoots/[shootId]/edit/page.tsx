import type { Metadata } from 'next'
import Link from 'next/link'
import { Suspense } from 'react'
import { takeRows } from '@/lib/export/best-takes'
import { cameraClockWords } from '@/lib/export/camera-clocks'
import { type Chapter, chaptersOf } from '@/lib/export/chapters'
import { clipsOfTakes } from '@/lib/export/clips-of-takes'
import { editClock } from '@/lib/export/edit-clock'
import { pickUpSummary, pickUpsOf } from '@/lib/export/pick-ups'
import { clockOf } from '@/lib/export/video-description'
import { ShootHead } from '../../../ui/shoot-head'
import { WithTerms } from '../../../ui/with-terms'
import { Working } from '../../../ui/working'
import { chosenUnits } from '../../../units'
import {
  captionsOfFacts,
  chaptersWebvtt,
  chaptersWords,
  clips,
  continuityReportWords,
  daysOwnLog,
  forEdit,
  missedShotsAndPickUps,
  noTakeNorPlace,
  nothingLoggedYet,
  setBoard,
  takesCsv,
  theRehearsedDay,
  timesFromSlate,
  timesOfVideo,
  toSeeWhatComes,
} from '../../../words/edit'
import { lastsHere, placingClips, playingDay } from '../../../words/working'
import { savedShoot } from '../../../workbench'
import { INVENTED, whichDay } from '../../day-log'
import { type EditDay, openEdit } from '../../edit-day'
import { clipsTold } from './clips-told'
import { EditDesk } from './edit-desk'
import { PickUps, Takes } from './edit-lists'

export const metadata: Metadata = { title: forEdit }
export const dynamic = 'force-dynamic'

type EditPageProps = { params: Promise<{ shootId: string }>; searchParams: Promise<{ day?: string | string[] }> }

export default async function EditPage({ params, searchParams }: EditPageProps) {
  const { shootId } = await params
  const saved = await savedShoot(shootId)
  const asked = (await searchParams).day
  return (
    <main id="main" className="page">
      <ShootHead open={saved} units={await chosenUnits()} page="wrap" />
      <h1>{forEdit}</h1>
      <Suspense fallback={<Working what={whichDay(asked).rehearsed ? playingDay : placingClips} lasts={lastsHere} />}>
        <OfDay shootId={shootId} asked={asked} />
      </Suspense>
    </main>
  )
}

async function OfDay({ shootId, asked }: { shootId: string; asked: string | string[] | undefined }) {
  const edit = await openEdit(shootId, asked)
  const { open, shoot, day, invented } = edit
  const isEmpty = day.takes.length === 0 && Object.keys(day.marks).length === 0
  return (
    <>
      <WhichDay id={shootId} invented={invented} isEmpty={isEmpty} />
      {!isEmpty && <Files id={shootId} edit={edit} />}
      <section aria-label={clips} className="mt-8">
        <h2>{clips}</h2>
        <ul className="mt-2 mb-0 list-none p-0">
          {cameraClockWords(shoot, day).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <EditDesk
          shootId={shootId}
          version={open.version}
          document={open.document}
          cameras={(open.shoot.cameras ?? []).map(({ id }) => id)}
          offered={invented ? [] : clipsOfTakes(day, '25')}
          told={clipsTold(edit)}
          invented={invented}
        />
      </section>
      {!isEmpty && (
        <>
          <Takes rows={takeRows(shoot, day)} />
          <section aria-label={missedShotsAndPickUps} className="mt-8">
            <h2>
              <WithTerms text={missedShotsAndPickUps} of={{ missed: 'missed', 'pick-up': 'pick-ups' }} />
            </h2>
            <p className="lead mt-1">{pickUpSummary(pickUpsOf(shoot, day))}</p>
            <PickUps all={pickUpsOf(shoot, day)} />
          </section>
        </>
      )}
    </>
  )
}

function WhichDay({ id, invented, isEmpty }: { id: string; invented: boolean; isEmpty: boolean }) {
  const here = `/shoots/${id}/edit`
  if (invented)
    return (
      <p className="conflict">
        {INVENTED} <a href={here}>{daysOwnLog}</a>
      </p>
    )
  if (!isEmpty) return null
  return (
    <p className="lead mt-2">
      {nothingLoggedYet} <Link href={`/shoots/${id}/set`}>{setBoard}</Link>
      {toSeeWhatComes} <a href={`${here}?day=rehearsed`}>{theRehearsedDay}</a>.
    </p>
  )
}

function Files({ id, edit: { shoot, day, invented } }: { id: string; edit: EditDay }) {
  const chapters = chaptersOf(shoot, day)
  const counts = editClock(shoot, day)?.counts
  const file = (name: string) => `/shoots/${id}/edit/${name}${invented ? '?day=rehearsed' : ''}`
  return (
    <section aria-label={chaptersWords} className="mt-4">
      <h2>{chaptersWords}</h2>
      <p className="lead mt-1">
        {counts === 'video' ? timesOfVideo : <WithTerms text={timesFromSlate} of={{ slate: 'slate' }} />}
      </p>
      <p className="mt-4 flex flex-wrap gap-4">
        <a className="btn main" href={file('chapters.vtt')} download>
          {chaptersWebvtt}
        </a>
        <a className="btn" href={file('captions.vtt')} download>
          {captionsOfFacts}
        </a>
        <a className="btn" href={file('takes.csv')} download>
          {takesCsv}
        </a>
        <a className="btn" href={file('continuity')}>
          {continuityReportWords}
        </a>
      </p>
      <Chapters chapters={chapters} />
    </section>
  )
}

function Chapters({ chapters }: { chapters: readonly Chapter[] }) {
  if (chapters.length === 0) return <p className="mt-2">{noTakeNorPlace}</p>
  return (
    <ol className="mt-4 list-none columns-1 gap-8 p-0 sm:columns-2 lg:columns-3">
      {chapters.map(({ startS, title }) => (
        <li key={startS} className="grid grid-cols-[4.5rem_1fr] gap-3 break-inside-avoid border-b border-rule py-1.5">
          <span className="time text-right">{clockOf(Math.round(startS))}</span>
          <span>{title}</span>
        </li>
      ))}
    </ol>
  )
}
