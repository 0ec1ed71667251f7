'use client'
import { Board } from './board'
import { useLacks } from './feed/use-lacks'
import { LiveSet, type LiveSetProps } from './live-set'

export function LiveBoard(props: LiveSetProps) {
  const lacks = useLacks()
  return (
    <LiveSet {...props}>
      <Board lacks={lacks} />
    </LiveSet>
  )
}
