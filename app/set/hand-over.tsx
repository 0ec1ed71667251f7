'use client'
import { useState } from 'react'
import { ownerFor } from '@/lib/session/who'
import { handedOver, handedOverTo, handOver, nobodyIKnow, toldYouCannot, youCannotWhoGoes } from '../words/desk'
import { useSet } from './set-context'
import { Sheet } from './sheet'

/** Who cannot come says who goes instead, or that somebody must be found. */
export function HandOver({ call, close }: { call: string; close: (told: boolean) => void }) {
  const { facts, me, log } = useSet()
  const others = facts.people.filter(({ id }) => id !== me)
  const cannot = () => {
    log({ kind: 'call-answer', call, answer: 'cannot' }, toldYouCannot)
    close(true)
  }
  const hand = (to: string, name: string) => {
    log({ kind: 'call-answer', call, answer: 'hand-over', to }, handedOver(name))
    close(true)
  }
  return (
    <Sheet title={youCannotWhoGoes} close={() => close(false)}>
      <div className="thumb names">
        {others.map(({ id, name, roles }) => (
          <button key={id} type="button" onClick={() => hand(id, name)}>
            {name}
            {roles.join() !== name && <small>{roles.join(', ')}</small>}
          </button>
        ))}
        <button type="button" className="main wide" onClick={cannot}>
          {nobodyIKnow}
        </button>
      </div>
    </Sheet>
  )
}

/** Straight from an alert to one of the two who are freest; they stay where they stand while a thumb comes down. */
export function HandDirectly({ call }: { call: string }) {
  const { session, me, nameOf, log } = useSet()
  const [freest] = useState(() => {
    const roles = session.day.people.find(({ id }) => id === me)?.roles ?? []
    const not = me === null ? [] : [me]
    const first = ownerFor(session, roles, not)
    const second = first && ownerFor(session, roles, [...not, first])
    return [first, second].filter((id) => id !== null)
  })
  return (
    <div className="thumb names hand">
      {freest.map((to) => (
        <button
          key={to}
          type="button"
          onClick={() => log({ kind: 'call-answer', call, answer: 'hand-over', to }, handedOverTo(nameOf(to)))}
        >
          <small>{handOver}</small> {nameOf(to)}
        </button>
      ))}
    </div>
  )
}
