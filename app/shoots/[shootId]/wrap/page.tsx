import type { Metadata } from 'next'
import Link from 'next/link'
import { Suspense } from 'react'
import { keptCookers } from '@/lib/data/cookers'
import { allAsRead, asRead } from '@/lib/plan/as-read'
import { formatClock } from '@/lib/plan/clock'
import type { Instant, UnitSystem } from '@/lib/units'
import { readersWay } from '../../../locale'
import { ShootHead } from '../../../ui/shoot-head'
import { WithTerms } from '../../../ui/with-terms'
import { Working } from '../../../ui/working'
import { chosenUnits } from '../../../units'
import { findingWhy, holdingDay, lastsHere, playingDay } from '../../../words/working'
import { layoutReady, type OpenShoot, openShoot, savedShoot } from '../../../workbench'
import { INVENTED, type WhichDay, whichDay } from '../../day-log'
import { BEFORE_MIN, type BeforeMin, type WrapModel, wrapModel } from '../../wrap-model'
import { wrapTold } from '../../wrap-told'
import { NoLayout } from '../no-layout'
import { AgainstFact } from './against-fact'
import { CallsAndPeople } from './calls-and-people'
import { CookerLearnt } from './cooker-learnt'
import { WhyAndNext } from './why-and-next'
import './wrap.css'
import {
  boardBeforePull,
  cardHeldAgainstThisDay,
  forEdit,
  howDayWent,
  lookAtRehearsedDay,
  noDayYet,
  onceMarked,
  shootsOwnDay,
  theWrap,
  whichForecastOfDay,
  wrap,
} from '../../../words/wrap'

export const metadata: Metadata = { title: wrap }
export const dynamic = 'force-dynamic'

interface Asked {
  readonly params: Promise<{ shootId: string }>
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>
}
export default async function WrapPage({ params, searchParams }: Asked) {
  const { shootId } = await params
  const saved = await savedShoot(shootId)
  const asked = await searchParams
  const units = await chosenUnits()
  const which = whichDay(asked.day)
  const before = BEFORE_MIN.find((min) => String(min) === asked.before) ?? 60
  return (
    <main id="main" className="page">
      <ShootHead open={saved} units={units} page="wrap" />
      <Suspense fallback={<Working what={which.rehearsed ? playingDay : holdingDay} lasts={lastsHere} />}>
        <Wrap shootId={shootId} which={which} before={before} units={units} />
      </Suspense>
    </main>
  )
}
interface WrapProps {
  readonly shootId: string
  readonly which: WhichDay
  readonly before: BeforeMin
  readonly units: UnitSystem
}
async function Wrap({ shootId, which, before, units }: WrapProps) {
  const open = await openShoot(shootId)
  const laid = await layoutReady(open.shoot)
  if (!laid.ok)
    return (
      <>
        <h1 className="sr-only">{theWrap}</h1>
        <NoLayout id={shootId} problems={laid.problems} />
      </>
    )
  const made = await wrapModel(open, laid.layout, which, before, units)
  if (!made) return <NothingYet id={open.id} />
  const way = await readersWay()
  const model = allAsRead(made, way)
  const clock = (at: Instant) => asRead(formatClock(at, open.shoot.zone), way)
  return (
    <>
      {model.invented && <Invented id={open.id} />}
      <h1>
        {model.headlines.length === 0 && howDayWent}
        {model.headlines.map((sentence) => (
          <span key={sentence} className="block">
            {sentence}
          </span>
        ))}
      </h1>
      <div className="cols-wrap">
        <div>
          <AgainstFact model={model} clock={clock} cooks={open.shoot.cooks.length} />
          <p className="mt-3">
            <WithTerms text={model.windows} of={{ moment: 'moments', window: 'window' }} />
          </p>
          {model.board && <OtherHours id={open.id} model={model} clock={clock} />}
          <CallsAndPeople model={model} clock={clock} shoot={open.shoot} />
          <p className="no-print mt-8 flex flex-wrap gap-x-6 gap-y-2">
            <Link className="textlink" href={`/shoots/${open.id}/edit${model.invented ? '?day=rehearsed' : ''}`}>
              {forEdit}
            </Link>
            <Link className="textlink" href={`/shoots/${open.id}/card${model.invented ? '?day=rehearsed' : ''}`}>
              {cardHeldAgainstThisDay}
            </Link>
          </p>
        </div>
        <Suspense fallback={<Working what={findingWhy} lasts={lastsHere} />}>
          <Told open={open} model={model} units={units} />
        </Suspense>
      </div>
    </>
  )
}

async function Told({ open, model, units }: { open: OpenShoot; model: WrapModel; units: UnitSystem }) {
  const told = await wrapTold(model)
  const cookers = await keptCookers()
  return (
    <div>
      {open.shoot.cooks.map((cook) => {
        const found = told[cook.id]
        const name = open.shoot.cooks.length > 1 ? `: ${cook.id}` : ''
        return (
          found && (
            <div key={cook.id}>
              <WhyAndNext name={name} cook={cook} told={found} rows={model.rows} units={units} />
              <CookerLearnt
                name={name}
                shootId={open.id}
                cook={cook}
                told={found.taught}
                cookers={cookers}
                invented={model.invented}
                units={units}
              />
            </div>
          )
        )
      })}
    </div>
  )
}

const NothingYet = ({ id }: { id: string }) => (
  <>
    <h1>{noDayYet}</h1>
    <p className="lead mt-2">{onceMarked}</p>
    <p className="mt-4">
      <Link className="textlink" href={`/shoots/${id}/wrap?day=rehearsed`} prefetch={false}>
        {lookAtRehearsedDay}
      </Link>
    </p>
  </>
)

const Invented = ({ id }: { id: string }) => (
  <p className="conflict" role="note">
    <b>{INVENTED}</b>{' '}
    <Link className="textlink" href={`/shoots/${id}/wrap`}>
      {shootsOwnDay}
    </Link>
  </p>
)

const HOURS: Readonly<Record<BeforeMin, string>> = { 30: 'half an hour', 60: 'one hour', 120: 'two', 180: 'three' }

/** Another hour to ask the board of. */
interface OtherHoursProps {
  readonly id: string
  readonly model: WrapModel
  readonly clock: (at: Instant) => string
}
function OtherHours({ id, model, clock }: OtherHoursProps) {
  const { board, invented } = model
  if (!board) return null
  const href = (min: BeforeMin) => `/shoots/${id}/wrap?before=${min}${invented ? '&day=rehearsed' : ''}` as const
  return (
    <nav aria-label={whichForecastOfDay} className="no-print small mt-1 flex flex-wrap items-baseline gap-x-4">
      <span>{boardBeforePull(clock(board.at))}</span>
      {BEFORE_MIN.map((min) => (
        <Link
          key={min}
          className="textlink hour"
          href={href(min)}
          prefetch={false}
          aria-current={min === board.beforeMin ? 'true' : undefined}
        >
          {HOURS[min]}
        </Link>
      ))}
    </nav>
  )
}
