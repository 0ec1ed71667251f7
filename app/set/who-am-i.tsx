'use client'
import { useSet } from './set-context'

/** Once per phone: whose calls it shows. */
export function WhoAmI() {
  const { facts, feed } = useSet()
  return (
    <section aria-label="Who are you?">
      <h1 className="next">Who are you?</h1>
      <p className="do">This phone remembers it, and shows your calls.</p>
      <div className="thumb two">
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
