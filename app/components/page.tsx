import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { buildCard, checkCard } from '@/lib/card/card'
import { visitorOf } from '@/lib/data/door/visitor'
import { listShoots } from '@/lib/data/list-shoots'
import { cutFaceSentence, drawCutFace, tonesOf } from '@/lib/export/cut-face'
import { loadSet, type SetPage } from '../set/load-set'
import { heatLineInput } from '../shoots/heat-line-input'
import { CutFace } from '../ui/cut-face'
import { HeatLine } from '../ui/heat-line'
import { atDusk, byDay, groups, lead, needsShoot, pageTitle } from '../words/components'
import { forecastsBehind } from '../worked-out'
import { BoardParts } from './board-parts'
import { LaptopParts } from './laptop-parts'
import { Part } from './part'
import '../set/set.css'
import '../set/desk.css'
import '../shoots/[shootId]/day/day.css'
import '../shoots/[shootId]/card/card-desk.css'
import './components.css'

export const metadata: Metadata = { title: pageTitle }
export const dynamic = 'force-dynamic'

/** For developers: every part in every state. What it shows are the parts themselves, so it cannot differ from them. */
export default async function ComponentsPage() {
  const set = await firstThatLaysOut()
  return (
    <main id="main" className="page components">
      <header className="head">
        <span className="name">{pageTitle}</span>
      </header>
      <h1 className="sr-only">{pageTitle}</h1>
      <p className="lead">{set ? lead : needsShoot}</p>
      {set && (
        <div className="grounds">
          {(['day', 'dusk'] as const).map((ground) => (
            <section key={ground} className={`ground ${ground}`} aria-label={ground === 'day' ? byDay : atDusk}>
              <LaptopParts document={set.open.document} claim={claimOf(set)} />
              <Pictures set={set} />
              <BoardParts opening={set.opening} facts={set.facts} units={set.units} />
            </section>
          ))}
        </div>
      )}
    </main>
  )
}

type Laid = SetPage & { readonly ok: true }
async function firstThatLaysOut(): Promise<Laid | null> {
  for (const { id } of await listShoots(await visitorOf(await headers()))) {
    const set = await loadSet(id)
    if (set.ok) return set
  }
  return null
}

function claimOf({ open: { shoot }, layout }: Laid) {
  const forecasts = forecastsBehind(shoot, layout)
  return checkCard(buildCard(shoot, forecasts), forecasts, null)[0] ?? null
}

function Pictures({ set: { open, layout, units } }: { set: Laid }) {
  const forecasts = forecastsBehind(open.shoot, layout)
  const forecast = forecasts.get(open.shoot.cooks[0]?.id ?? '')
  return (
    <Part name={groups.pictures}>
      <HeatLine {...heatLineInput(open.shoot, forecasts, layout, true, units)} />
      {forecast && (
        <CutFace
          drawing={drawCutFace(forecast, units)}
          sentence={cutFaceSentence(forecast, units)}
          tones={tonesOf(forecast, units)}
        />
      )}
    </Part>
  )
}
