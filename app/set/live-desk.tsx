'use client'
import { continuity, readingsFromFileOrDevice } from '../words/desk'
import { Desk } from './desk'
import { useLacks } from './feed/use-lacks'
import { LiveSet, type LiveSetProps } from './live-set'
import type { PlannedDay } from './re-plan'

export function LiveDesk({ day, ...props }: LiveSetProps & { day: PlannedDay }) {
  const lacks = useLacks()
  return (
    <LiveSet {...props} inPage>
      <p className="desk-links no-print">
        <a className="textlink" href={`/shoots/${props.shootId}/set/readings`}>
          {readingsFromFileOrDevice}
        </a>
        <a className="textlink" href={`/shoots/${props.shootId}/set/continuity`}>
          {continuity}
        </a>
      </p>
      <Desk lacks={lacks} day={day} />
    </LiveSet>
  )
}
