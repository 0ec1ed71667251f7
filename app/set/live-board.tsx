'use client'
import { Board } from './board'
import { useLacks } from './feed/use-lacks'
import { LiveSet, type LiveSetProps } from './live-set'

export function LiveBoard({ canTrust, ...props }: LiveSetProps & { canTrust: boolean }) {
  const lacks = useLacks()
  return (
    <LiveSet {...props}>
      <Board lacks={lacks} canTrust={canTrust} />
    </LiveSet>
  )
}
