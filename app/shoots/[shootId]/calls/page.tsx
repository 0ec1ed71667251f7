import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { Suspense } from 'react'
import { calendarPath } from '@/lib/data/door/calendar-keys'
import { linksOf } from '@/lib/data/door/links'
import { isSecure, visitorOf } from '@/lib/data/door/visitor'
import { crewMode } from '@/lib/data/env'
import type { CallSheetModel } from '@/lib/export/call-sheet'
import type { Slip } from '@/lib/export/slips'
import { allAsRead } from '@/lib/plan/as-read'
import type { Shoot } from '@/lib/plan/shoot'
import type { UnitSystem } from '@/lib/units'
import { announced } from '../../../announced'
import { readersWay } from '../../../locale'
import { Caution } from '../../../ui/field'
import { MadeFiles } from '../../../ui/made-files'
import { ShootHead } from '../../../ui/shoot-head'
import { Sideways } from '../../../ui/sideways'
import { WithTerms } from '../../../ui/with-terms'
import { Working } from '../../../ui/working'
import { chosenUnits } from '../../../units'
import {
  allergensOnSet,
  calendar,
  calendarIsYours,
  callSheetA4,
  callsThatHappenOnce,
  callsWords,
  careWords,
  crewCallWrap,
  eachHasCalendar,
  earlyToLate,
  emergencyWords,
  firstSetup,
  freeShotsInGaps,
  hospitalWords,
  howToReadCalls,
  likelyWords,
  mealsWatchAndKit,
  mealsWatchKit,
  mealsWords,
  momentWords,
  noCrew,
  none,
  noneWords,
  notesWords,
  oneSlipEach,
  openAgainOrSubscribe,
  orCalled,
  parkingWords,
  shotWords,
  slipOf,
  slipsWords,
  standBy,
  usLetter,
  wholeShoot,
  whoWords,
  yourCalendarSubscribes,
  yourOwnCall,
} from '../../../words/calls'
import { lastsHere, layingOut, printing, theCallSheet } from '../../../words/working'
import { layoutReady, openShoot, savedShoot } from '../../../workbench'
import { callSheetModel } from '../../call-sheet-model'
import { prepModel, riskModel } from '../../prep-model'
import { NoLayout } from '../no-layout'
import { RePlanned } from '../re-planned-line'
import { PrepOnPage, RiskOnPage } from './prep-and-risk'
import { ProducerDesk } from './producer-desk'

export const metadata: Metadata = { title: callsWords }
export const dynamic = 'force-dynamic'

export default async function CallsPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const saved = await savedShoot(shootId)
  const units = await chosenUnits()
  const { shots = [], people = [] } = saved.shoot
  return (
    <main id="main" className="page">
      <ShootHead open={saved} units={units} page="calls" />
      <Suspense fallback={<Working what={layingOut(shots.length, people.length)} lasts={lastsHere} />}>
        <LaidOut shootId={shootId} units={units} />
      </Suspense>
    </main>
  )
}

async function LaidOut({ shootId, units }: { shootId: string; units: UnitSystem }) {
  const open = await openShoot(shootId)
  const laid = await layoutReady(open.shoot)
  const told = laid.ok ? await announced(shootId, laid.layout, open.shoot.zone) : null
  const way = await readersWay()
  return (
    <>
      {told && (
        <>
          <RePlanned last={told.last} zone={open.shoot.zone} />
          <Calls id={shootId} sheet={allAsRead(callSheetModel(open, told, units), way)} />
          <PrepOnPage id={shootId} list={allAsRead(prepModel(open, told.layout, units), way)} />
          <RiskOnPage id={shootId} sheet={allAsRead(riskModel(open, told.layout, units), way)} />
          <CalendarLinks id={shootId} people={open.shoot.people ?? []} own={await ownCalendar(shootId)} />
        </>
      )}
      {!laid.ok && <NoLayout id={shootId} problems={laid.problems} />}
      <ProducerDesk shootId={shootId} version={open.version} document={open.document} />
    </>
  )
}

/** The address that a calendar of whoever reads this can ask by itself; null where they have no link of their own. */
async function ownCalendar(shootId: string): Promise<string | null> {
  const from = await headers()
  const { grants } = await visitorOf(from)
  const person = grants.find(({ shoot }) => shoot === shootId)?.person
  const link = (await linksOf(shootId)).find((one) => one.person === person)
  if (!link) return null
  return `${isSecure(from) ? 'https' : 'http'}://${from.get('host')}${await calendarPath(link)}`
}

interface CalendarLinksProps {
  readonly id: string
  readonly people: NonNullable<Shoot['people']>
  readonly own: string | null
}
function CalendarLinks({ id, people, own }: CalendarLinksProps) {
  const feed = `/api/shoots/${id}/calls.ics`
  return (
    <section aria-label={calendar} className="no-print mt-10 max-w-3xl">
      <h2>{calendar}</h2>
      <p className="mt-2 flex flex-wrap gap-x-6 gap-y-2">
        <a className="textlink" href={feed}>
          {wholeShoot}
        </a>
        {people.map((person) => (
          <a key={person.id} className="textlink" href={`${feed}?person=${person.id}`}>
            {person.name ?? person.id}
          </a>
        ))}
      </p>
      {own ? (
        <p className="mt-4">
          {yourCalendarSubscribes} <code className="break-all">{own}</code>
          {calendarIsYours}
        </p>
      ) : (
        <p className="small mt-2">{crewMode() ? eachHasCalendar : openAgainOrSubscribe}</p>
      )}
    </section>
  )
}

function Calls({ id, sheet }: { id: string; sheet: CallSheetModel }) {
  return (
    <>
      <div className="cols-head">
        <div>
          <h1>{crewCallWrap(sheet.crewCall, sheet.wrap)}</h1>
          <p className="lead mt-1">
            {sheet.place}. {sheet.light}
          </p>
        </div>
        <MadeFiles what={printing(theCallSheet)}>
          <span className="flex flex-wrap gap-4">
            <a className="btn main" href={`/shoots/${id}/call-sheet.pdf?paper=A4`}>
              {callSheetA4}
            </a>
            <a className="btn" href={`/shoots/${id}/call-sheet.pdf?paper=Letter`}>
              {usLetter}
            </a>
          </span>
        </MadeFiles>
      </div>
      <section aria-label={callsThatHappenOnce} className="mt-6">
        <h2>{callsThatHappenOnce}</h2>
        <p className="small no-print mb-3 max-w-[66ch]">
          <WithTerms
            text={howToReadCalls}
            of={{ moment: 'moment', window: 'window', standby: 'stand by', trigger: 'trigger' }}
          />
        </p>
        {sheet.calls.length === 0 ? <p>{none}</p> : <CallsTable sheet={sheet} />}
        <p className="small mt-2">{sheet.foot.join(' ')}</p>
      </section>
      <div className="cols-3 mt-10">
        <OwnCalls sheet={sheet} />
        <Gaps sheet={sheet} />
        <section aria-label={mealsWatchAndKit}>
          <h2>{mealsWatchKit}</h2>
          <ul className="rows">
            <li>
              {mealsWords} {sheet.meals || noneWords}.
            </li>
            {sheet.watch.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
            <li>{sheet.kit}</li>
            <li>{sheet.fire}</li>
            <ProducerWords producer={sheet.producer} />
          </ul>
        </section>
      </div>
      {sheet.slips.length > 0 && (
        <section aria-label={slipsWords} className="mt-10">
          <h2>
            <WithTerms text={oneSlipEach} of={{ slip: 'slip' }} />
          </h2>
          <div className="slips mt-4">
            {sheet.slips.map((slip) => (
              <SlipOnPage key={slip.person} slip={slip} />
            ))}
          </div>
        </section>
      )}
      <section aria-label={careWords} className="mt-10">
        <h2>{careWords}</h2>
        <div className="cautions mt-2">
          {sheet.care.map((sentence) => (
            <Caution key={sentence}>{sentence}</Caution>
          ))}
        </div>
      </section>
    </>
  )
}

function OwnCalls({ sheet }: { sheet: CallSheetModel }) {
  return (
    <section aria-label={yourOwnCall}>
      <h2>{yourOwnCall}</h2>
      {sheet.own.length === 0 && <p className="mt-2">{noCrew}</p>}
      <ul className="rows timed">
        {sheet.own.map((own) => (
          <li key={own.name}>
            <span className="time">{own.call}</span>
            <span>
              <b>{own.name}</b> <span className="small">{own.does}</span>
              {own.first && <span className="small block">{firstSetup(own.first)}</span>}
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}

function Gaps({ sheet }: { sheet: CallSheetModel }) {
  return (
    <section aria-label={freeShotsInGaps}>
      <h2>{freeShotsInGaps}</h2>
      {sheet.gaps.length === 0 && <p className="mt-2">{none}</p>}
      <ul className="rows timed">
        {sheet.gaps.map((gap) => (
          <li key={`${gap.time} ${gap.shot}`}>
            <span className="time">{gap.time}</span>
            <span>
              {gap.shot} <span className="small">{gap.who}</span>
            </span>
          </li>
        ))}
      </ul>
      {sheet.dropped.map((sentence) => (
        <p key={sentence} className="conflict">
          {sentence}
        </p>
      ))}
    </section>
  )
}

function ProducerWords({ producer }: { producer: CallSheetModel['producer'] }) {
  const said = [
    [emergencyWords, producer.emergency],
    [hospitalWords, producer.hospital],
    [allergensOnSet, producer.allergens],
    [parkingWords, producer.parking],
    [notesWords, producer.notes],
  ] as const
  return (
    <>
      {said.map(([label, words]) => words !== null && <li key={label}>{`${label}: ${words}`}</li>)}
      {producer.contacts.map((words) => (
        <li key={words}>{words}</li>
      ))}
    </>
  )
}

function CallsTable({ sheet }: { sheet: CallSheetModel }) {
  return (
    <Sideways of={callsThatHappenOnce}>
      <table className="stacks trade mt-2">
        <thead>
          <tr>
            <th scope="col" className="text-right">
              {likelyWords}
            </th>
            <th scope="col">{momentWords}</th>
            <th scope="col">{shotWords}</th>
            <th scope="col">{earlyToLate}</th>
            <th scope="col">{standBy}</th>
            <th scope="col">{orCalled}</th>
            <th scope="col">{whoWords}</th>
          </tr>
        </thead>
        <tbody>
          {sheet.calls.map((call) => (
            <tr key={call.shot} className="moment">
              <td className="time text-right">{call.likely}</td>
              <td className="font-semibold">{call.moment}</td>
              <td data-label={shotWords}>{call.shot}</td>
              <td className="win" data-label={earlyToLate}>
                {call.window}
              </td>
              <td data-label={standBy}>{call.standby}</td>
              <td data-label={orCalled}>{call.trigger}</td>
              <td data-label={whoWords}>{call.who}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}

function SlipOnPage({ slip }: { slip: Slip }) {
  return (
    <article aria-label={slipOf(slip.person)}>
      <h3>
        {slip.person} <span className="small font-normal">{slip.does}</span>
      </h3>
      <ol className="rows timed">
        {slip.rows.map((row) => (
          <li key={row.time + row.title} className={row.once ? 'once' : undefined}>
            <span className="time">{row.time}</span>
            <span>
              {row.title}
              <span className="small block">{row.detail}</span>
            </span>
          </li>
        ))}
      </ol>
    </article>
  )
}
