'use client'
import { Desk } from './desk'
import { useLacks } from './feed/use-lacks'
import { LiveSet, type LiveSetProps } from './live-set'

export function LiveDesk(props: LiveSetProps) {
  const lacks = useLacks()
  return (
    <LiveSet {...props}>
      <Desk lacks={lacks} />
    </LiveSet>
  )
}
