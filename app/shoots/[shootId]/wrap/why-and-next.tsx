import { burnsSolidFuel } from '@/lib/plan/moments'
import type { Cook } from '@/lib/plan/shoot'
import { type Celsius, type Instant, kelvins, seconds, type UnitSystem } from '@/lib/units'
import type { MomentRow } from '@/lib/wrap/moments'
import { nextTime } from '@/lib/wrap/next-time'
import { whySentences, whyTitle } from '@/lib/wrap/why-words'
import { nextTimeWords, noChange, whyItWent, whyNotKnown } from '../../../words/wrap'
import type { CookWhy } from '../../wrap-why'

interface Props {
  readonly name: string
  readonly cook: Cook
  readonly told: CookWhy
  readonly rows: readonly MomentRow[]
  readonly units: UnitSystem
}

export function WhyAndNext({ name, cook, told, rows, units }: Props) {
  const { why } = told
  const own = rows.filter((row) => row.cook === cook.id)
  const next = nextTime({
    why,
    levelK: told.taught && kelvins(told.taught.memory.level.mean),
    asked: roastAt(cook),
    rows: own,
    readings: told.readings,
    ...sinceMeatOn(own),
    narrows: told.narrows,
    burns: burnsSolidFuel(cook.cooker.kind),
    units,
  })
  return (
    <>
      <h2>{why ? `${whyTitle(why)}${name}` : whyItWent(name)}</h2>
      {!why && <p className="mt-2">{whyNotKnown}</p>}
      {why && <p className="mt-2">{whySentences(why, cook.cooker.kind, units).join(' ')}</p>}
      <h2 className="mt-8">{nextTimeWords}</h2>
      {next.length === 0 && <p className="mt-2">{noChange}</p>}
      <ul className="ruled-list mt-2">
        {next.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </>
  )
}

const roastAt = (cook: Cook): Celsius | null => cook.stages.findLast((stage) => stage.do === 'roast')?.at ?? null

function sinceMeatOn(rows: readonly MomentRow[]) {
  const at = (moment: string) => rows.find((row) => row.moment === moment)?.happened ?? null
  const on = at('meat-on')
  const since = (when: Instant | null) => (on === null || when === null ? null : seconds((when - on) / 1000))
  return { pullS: since(at('pull')), offS: since(at('off-heat')), sliceS: since(at('first-slice')) }
}
