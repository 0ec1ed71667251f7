import type { Metadata } from 'next'
import { Suspense } from 'react'
import type { Layout } from '@/lib/day/layout'
import { callWindow, clockOf, isLive, type Sheet, triggerWords, whoWords } from '@/lib/export/call-words'
import { shotNumbers } from '@/lib/export/shot-numbers'
import type { MomentId } from '@/lib/model/moment-ids'
import { momentName } from '@/lib/plan/moments'
import type { Shoot } from '@/lib/plan/shoot'
import { formatShare, type UnitSystem } from '@/lib/units'
import { HeatLine } from '../../../ui/heat-line'
import { ShootHead } from '../../../ui/shoot-head'
import { chosenUnits } from '../../../units'
import { factsOf, forecastsOf, layoutOf, type OpenShoot, openShoot } from '../../../workbench'
import { heatLineInput } from '../../heat-line-input'
import { NoLayout } from '../no-layout'
import { DayDesk, type ShotRow } from './day-desk'

export const metadata: Metadata = { title: 'Day' }
export const dynamic = 'force-dynamic'

export default async function DayPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const open = await openShoot(shootId)
  const units = await chosenUnits()
  const people = open.shoot.people?.length ?? 0
  return (
    <main id="main" className="page">
      <ShootHead
        id={shootId}
        title={open.shoot.title}
        facts={factsOf(open.shoot, units)}
        page="day"
        canUndo={open.canUndo}
        units={units}
      />
      <h1 className="sr-only">The day: {open.shoot.title}</h1>
      <Suspense
        fallback={<p className="lead">{`Laying out ${open.shoot.shots?.length ?? 0} shots, ${people} people.`}</p>}
      >
        <Day open={open} units={units} />
      </Suspense>
    </main>
  )
}

async function Day({ open, units }: { open: OpenShoot; units: UnitSystem }) {
  const laid = layoutOf(open.shoot)
  const layout = laid.ok ? laid.layout : null
  return (
    <>
      {layout && <HeatLine {...heatLineInput(open.shoot, forecastsOf(open.shoot), layout, true, units)} />}
      {!laid.ok && <NoLayout problems={laid.problems} />}
      <div className="cols-day">
        <DayDesk
          shootId={open.id}
          version={open.version}
          document={open.document}
          rows={layout ? rowsOf(open.shoot, layout, units) : []}
        />
        {layout && (
          <div>
            <DoesNotFit shoot={open.shoot} layout={layout} />
            <Holds shoot={open.shoot} layout={layout} />
          </div>
        )}
      </div>
    </>
  )
}

function rowsOf(shoot: Shoot, layout: Layout, units: UnitSystem): readonly ShotRow[] {
  const sheet: Sheet = { shoot, layout, units }
  const numbers = shotNumbers(shoot)
  const rows = (shoot.shots ?? []).map((shot) => {
    const placed = layout.shots.find((p) => p.id === shot.id)
    const call = layout.calls.find((c) => c.for === shot.id && c.moment !== null)
    const likely = call?.window.likely ?? placed?.start ?? null
    const trigger = call ? triggerWords(sheet, call) : ''
    const standby = call && clockOf(sheet, call.standby)
    const row: ShotRow = {
      id: shot.id,
      number: numbers.get(shot.id) ?? 0,
      kind: placed ? (call ? 'moment' : 'free') : 'drop',
      likely: placed ? clockOf(sheet, likely) : '',
      camera: placed?.camera.join(' ') ?? '',
      people: placed ? whoWords(sheet, { people: placed.people, camera: [] }) : '',
      standby: call && isLive(call) ? (call.trigger ? `${trigger}, about ${standby}` : trigger) : (standby ?? ''),
      window: call ? callWindow(sheet, call) : '',
      tentative: placed?.hold === 'tentative' && mayBeCut(layout, placed.start),
    }
    return { row, at: likely ? Date.parse(likely) : Number.POSITIVE_INFINITY }
  })
  return rows.sort((a, b) => a.at - b.at).map(({ row }) => row)
}

/** Whether a moment that is called live may come while this shot rolls. */
function mayBeCut(layout: Layout, start: string): boolean {
  const live = layout.calls.filter((call) => isLive(call) && call.window.early)
  const from = Math.min(...live.map((call) => Date.parse(call.window.early ?? '')))
  const to = Math.max(...live.map((call) => Date.parse(call.window.late ?? call.window.early ?? '')))
  return Date.parse(start) >= from && Date.parse(start) <= to
}
/** A sample of cooks never makes certain. */
const chance = (share: number) => (share > 0.995 ? 'over 99 %' : formatShare(share))

function DoesNotFit({ shoot, layout }: { shoot: Shoot; layout: Layout }) {
  const numbers = shotNumbers(shoot)
  const named = (id: string) => {
    const shot = shoot.shots?.find((each) => each.id === id)
    return `${numbers.get(id)} ${shot?.title}${shot?.priority === 'must' ? ', a must' : ''}`
  }
  // A must that was dropped is told once, with the others that were.
  const conflicts = layout.conflicts.filter(({ rule }) => rule !== 'must-dropped')
  if (layout.dropped.length === 0 && layout.conflicts.length === 0)
    return (
      <section aria-label="Does not fit">
        <h2>Everything fits</h2>
      </section>
    )
  return (
    <section aria-label="Does not fit">
      <h2>Does not fit</h2>
      {layout.dropped.map((drop) => (
        <div className="conflict" key={drop.id}>
          <h3>{named(drop.id)}</h3>
          <p>{drop.why}</p>
          <p className="way">{drop.wouldSave}</p>
        </div>
      ))}
      {conflicts.map((conflict) => (
        <div className="conflict" key={conflict.sentence}>
          <p>{conflict.sentence}</p>
        </div>
      ))}
    </section>
  )
}

function Holds({ shoot, layout }: { shoot: Shoot; layout: Layout }) {
  const sheet: Sheet = { shoot, layout, units: 'metric' }
  const worst = Object.entries(layout.capture.each).sort((a, b) => a[1] - b[1])[0]
  const worstMoment = worst?.[0].split('/').at(-1)
  return (
    <section aria-label="Holds" className="mt-6">
      <h2>Holds</h2>
      <dl className="facts-list">
        {worst && (
          <>
            <dt className="time">{chance(worst[1])}</dt>
            <dd>
              chance that each moment is caught, at worst (
              {momentName(worstMoment as MomentId, shoot.cooks[0]?.cooker.kind ?? 'oven')})
            </dd>
            <dt className="time">{chance(layout.capture.joint)}</dt>
            <dd>that all {Object.keys(layout.capture.each).length} are</dd>
          </>
        )}
        {layout.meals.map((meal) => (
          <div key={meal.start + meal.people.join()} className="contents">
            <dt className="time">{clockOf(sheet, meal.start)}</dt>
            <dd>
              meal, to {clockOf(sheet, meal.end)}: {meal.people.join(', ')}
            </dd>
          </div>
        ))}
        <dt className="time">{clockOf(sheet, layout.wrap)}</dt>
        <dd>wrap</dd>
      </dl>
    </section>
  )
}
