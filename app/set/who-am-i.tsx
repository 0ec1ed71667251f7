'use client'
import { nobodyInShoot, putCrewIn, thisPhoneRemembers, whoAreYou } from '../words/set'
import { useSet } from './set-context'

/** Once per phone: whose calls it shows. */
export function WhoAmI() {
  const { facts, feed, snapshot } = useSet()
  return (
    <section aria-label={whoAreYou}>
      <h1 className="next">{whoAreYou}</h1>
      <p className="do">{facts.people.length > 0 ? thisPhoneRemembers : nobodyInShoot}</p>
      {facts.people.length === 0 && (
        <a className="textlink" href={snapshot.rehearsal ? '../day' : 'day'}>
          {putCrewIn}
        </a>
      )}
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
