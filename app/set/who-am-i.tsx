'use client'
import { thisPhoneRemembers, whoAreYou } from '../words/set'
import { useSet } from './set-context'

/** Once per phone: whose calls it shows. */
export function WhoAmI() {
  const { facts, feed } = useSet()
  return (
    <section aria-label={whoAreYou}>
      <h1 className="next">{whoAreYou}</h1>
      <p className="do">{thisPhoneRemembers}</p>
      <div className="thumb names">
        {facts.people.map(({ id, name, roles }) => (
          <button key={id} type="button" onClick={() => feed.choose(id)}>
            {name}
            {roles.join() !== name && <small>{roles.join(', ')}</small>}
          </button>
        ))}
      </div>
    </section>
  )
}
