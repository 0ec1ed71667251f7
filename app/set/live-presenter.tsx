'use client'
import { LiveSet, type LiveSetProps } from './live-set'
import { Presenter } from './presenter'

export function LivePresenter(props: LiveSetProps) {
  return (
    <LiveSet {...props}>
      <Presenter />
    </LiveSet>
  )
}
