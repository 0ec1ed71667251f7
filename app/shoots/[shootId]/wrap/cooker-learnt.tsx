import type { KeptCooker } from '@/lib/data/cookers'
import type { Cook } from '@/lib/plan/shoot'
import { formatDuration, type UnitSystem } from '@/lib/units'
import { memorySentence } from '@/lib/wrap/memory-words'
import { numberWord } from '@/lib/wrap/words'
import { WithTerms } from '../../../ui/with-terms'
import {
  afterCooks,
  afterToday,
  inventedDayTeachesNothing,
  noEnd,
  nothingNoProbeWasRead,
  whatThisCookerTaught,
  widthOfSliceWindow,
} from '../../../words/wrap'
import { type CookerTaught, lessonName } from '../../wrap-why'
import { KeepCooker } from './keep-cooker'

interface Props {
  readonly name: string
  readonly shootId: string
  readonly cook: Cook
  readonly told: CookerTaught | null
  readonly cookers: readonly KeptCooker[]
  readonly invented: boolean
  readonly units: UnitSystem
}

/** How much surer the next forecast is for what this cooker has taught, and whether that is kept. */
export function CookerLearnt({ name, shootId, cook, told, cookers, invented, units }: Props) {
  const kind = cook.cooker.kind
  const alike = cookers.filter((one) => one.kind === kind)
  const lesson = lessonName(shootId, cook.id)
  const keptIn = alike.find(({ lessons }) => lessons.some((one) => one.cook === lesson)) ?? null
  const forgotten = alike.find(({ lessons, forgotten }) => lessons.length === 0 && forgotten > 0) ?? null
  return (
    <section aria-label={whatThisCookerTaught(name)} className="mt-8">
      <h2>
        <WithTerms text={whatThisCookerTaught(name)} of={{ 'cooker memory': 'taught' }} />
      </h2>
      {!told && <p className="mt-2">{nothingNoProbeWasRead}</p>}
      {told && (
        <>
          <p className="small mt-1">
            <WithTerms text={widthOfSliceWindow} of={{ window: 'window' }} />
          </p>
          <Bars told={told} />
          <p className="mt-2">{memorySentence(told.memory, units)}</p>
          {invented ? (
            <p className="small mt-2">{inventedDayTeachesNothing}</p>
          ) : (
            <KeepCooker
              shootId={shootId}
              cook={cook.id}
              named={cook.cooker.name ?? ''}
              names={alike.filter(({ lessons }) => lessons.length > 0).map((one) => one.name)}
              kept={keptIn && { id: keptIn.id, name: keptIn.name, cooks: keptIn.lessons.length }}
              forgotten={forgotten && { id: forgotten.id, name: forgotten.name, cooks: forgotten.forgotten }}
            />
          )}
        </>
      )}
    </section>
  )
}

const NTH = ['before any cook', 'after the first', 'after the second', 'after the third']
function Bars({ told: { widths } }: { told: CookerTaught }) {
  const widest = Math.max(...widths.map(({ widthS }) => (Number.isFinite(widthS) ? widthS : 0)))
  return (
    <dl className="learnt">
      {widths.map(({ cooks, widthS }, i) => (
        <div key={cooks}>
          <dt>{i === widths.length - 1 ? afterToday : (NTH[cooks] ?? afterCooks(numberWord(cooks)))}</dt>
          <dd>
            <svg width="100%" height="12" aria-hidden="true">
              <rect width={`${Number.isFinite(widthS) ? (100 * widthS) / widest : 100}%`} height="12" />
            </svg>
            <span title={Number.isFinite(widthS) ? formatDuration(widthS) : undefined}>
              {Number.isFinite(widthS) ? Math.round(widthS / 60) : noEnd}
            </span>
          </dd>
        </div>
      ))}
    </dl>
  )
}
