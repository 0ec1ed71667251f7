'use client'
import { Desk } from './desk'
import { useLacks } from './feed/use-lacks'
import { LiveSet, type LiveSetProps } from './live-set'
import type { PlannedDay } from './re-plan'

export function LiveDesk({ day, ...props }: LiveSetProps & { day: PlannedDay }) {
  const lacks = useLacks()
  return (
    <LiveSet {...props}>
      <Desk lacks={lacks} day={day} />
    </LiveSet>
  )
}
