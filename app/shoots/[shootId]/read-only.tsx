import { headers } from 'next/headers'
import type { ReactNode } from 'react'
import { mayEdit } from '@/lib/data/door/access'
import { visitorOf } from '@/lib/data/door/visitor'
import { UnitsButton } from '../../ui/units-button'
import { chosenUnits } from '../../units'
import { onlyReading, whatYouMayDo } from '../../words/set'

/** A page on which a shoot is changed, for those who may only read it: nothing on it can be pressed or typed. */
export async function ReadOnly({ children, params }: { children: ReactNode; params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  if (mayEdit(await visitorOf(await headers()), shootId)) return children
  return (
    <>
      <aside aria-label={whatYouMayDo} className="page no-print small flex flex-wrap gap-x-4 pb-0!">
        {onlyReading}
        <UnitsButton units={await chosenUnits()} />
      </aside>
      <fieldset disabled className="reading">
        {children}
      </fieldset>
    </>
  )
}
