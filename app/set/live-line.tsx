'use client'
import { useMemo } from 'react'
import { drawHeat } from '@/lib/export/heat-line-draw'
import { instant } from '@/lib/units'
import { Figures } from '../ui/drawing'
import { HeatLineHand } from '../ui/heat-line-hand'
import { type HeatShapeView, PAGE_SIZES } from '../ui/heat-line-shapes'
import { noMomentKnownYet } from '../words/heat-line'
import { heatNow } from './live-roast'
import { useSet } from './set-context'
import '../ui/heat-line.css'

const MINUTE = 60_000
const BOARD: readonly HeatShapeView[] = [{ media: 'all', view: { width: 332, standing: true, lanes: false } }]
const DESK: readonly HeatShapeView[] = PAGE_SIZES.map(({ media, width, standing }) => ({
  media,
  view: { width, standing, lanes: false },
}))

/** One roast of the running day: readings as open dots, the forecast in its band, this morning's dashed, and now. */
export function LiveLine({ cook, on }: { cook: string; on: 'board' | 'desk' }) {
  const { session, facts, heat, now } = useSet()
  const { told, forecast } = session
  const morning = heat[cook]
  // Not at every second: only what was told or forecast changes it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the session these two are read
  const live = useMemo(() => morning && heatNow(morning, session, facts, cook), [morning, told, forecast, facts, cook])
  const minute = instant(Math.round(now / MINUTE) * MINUTE)
  const tables = useMemo(
    () => (live ? drawHeat({ width: 332, standing: true, lanes: false, now: minute }, live).tables : []),
    [live, minute],
  )
  if (!live) return <p className="fine">{noMomentKnownYet}</p>
  return (
    <>
      <HeatLineHand facts={live} shapes={on === 'board' ? BOARD : DESK} focus={false} now={minute} />
      <Figures tables={tables} />
    </>
  )
}
