'use client'
import { useRouter } from 'next/navigation'
import { useId, useState } from 'react'
import type { DoorAddress } from '@/lib/data/door/door-addresses'
import type { LinkRole } from '@/lib/data/door/links'
import { Field } from '../../../ui/field'
import { send } from '../../../ui/send'
import {
  calendarAddress,
  codesForAll,
  codesOpen,
  codesOpenWhy,
  forWords,
  isOut,
  makeCode,
  newCode,
  nobodyIsInThisShoot,
  noLink,
  notOpenedYet,
  ofWords,
  peopleWords,
  shutOutEnds,
  shutOutWords,
  whatMayDo,
} from '../../../words/crew'
import { type ShownCode, ShownCodes } from './shown-codes'

export interface PersonRow {
  readonly id: string
  readonly name: string
  readonly does: string
  readonly link: {
    readonly id: string
    readonly role: LinkRole
    readonly until: string
    readonly phones: number
    readonly seen: string | null
    /** The path of this person's calendar, with its key. */
    readonly calendar: string
  } | null
}

const MAY: Record<LinkRole, string> = { crew: 'reads and logs', viewer: 'reads', producer: 'changes the shoot' }

/** Who may come in, by which code, and who is out. */
export function CrewDesk(props: {
  shootId: string
  people: readonly PersonRow[]
  addresses: readonly DoorAddress[]
  roles: readonly LinkRole[]
}) {
  const router = useRouter()
  const [origin, setOrigin] = useState(props.addresses[0]?.origin ?? '')
  const [codes, setCodes] = useState<readonly ShownCode[]>([])
  const [sentence, setSentence] = useState<string>()
  const links = `/api/shoots/${props.shootId}/links`

  async function make(person: PersonRow, role: LinkRole) {
    const answer = await send<Omit<ShownCode, 'name'>>(links, 'POST', { person: person.id, role, origin })
    setSentence(answer.ok ? undefined : answer.sentence)
    if (answer.ok)
      setCodes((shown) => [
        ...shown.filter((one) => one.link.person !== person.id),
        { ...answer.value, name: person.name },
      ])
    return answer.ok
  }
  async function shutOut(person: PersonRow) {
    const answer = await send(`${links}/${person.link?.id}`, 'DELETE', {})
    setSentence(answer.ok ? isOut(person.name) : answer.sentence)
    setCodes((shown) => shown.filter((one) => one.link.person !== person.id))
    router.refresh()
  }
  const without = props.people.filter(({ link }) => link === null)
  async function makeAll() {
    for (const person of without) if (!(await make(person, 'crew'))) break
    router.refresh()
  }
  return (
    <>
      <ShownCodes codes={codes} forget={() => setCodes([])} />
      <section aria-label={peopleWords} className="no-print mt-4 max-w-4xl">
        <div className="max-w-md">
          <Field
            label={codesOpen}
            value={origin}
            onChange={setOrigin}
            options={props.addresses.map((one) => [one.origin, `${one.origin}${one.trusted ? ' (trusted)' : ''}`])}
            why={codesOpenWhy}
          />
        </div>
        {without.length > 1 && (
          <button type="button" className="btn main mb-2" onClick={makeAll}>
            {codesForAll(without.length)}
          </button>
        )}
        {props.people.some(({ link }) => link) && <p className="small mb-2">{shutOutEnds}</p>}
        <p role="status">{sentence && <span className="says">{sentence}</span>}</p>
        <ul className="m-0 list-none border-t-2 border-ink p-0">
          {props.people.length === 0 && <li className="small py-3">{nobodyIsInThisShoot}</li>}
          {props.people.map((person) => (
            <PersonLine
              key={person.id}
              person={person}
              roles={props.roles}
              origin={origin}
              make={async (role) => {
                await make(person, role)
                router.refresh()
              }}
              shutOut={() => shutOut(person)}
            />
          ))}
        </ul>
      </section>
    </>
  )
}

function PersonLine(props: {
  person: PersonRow
  roles: readonly LinkRole[]
  origin: string
  make: (role: LinkRole) => void
  shutOut: () => void
}) {
  const { person } = props
  const id = useId()
  // What the list shows: a producer's own role is not in it for another producer.
  const [role, setRole] = useState<LinkRole>(props.roles.find((one) => one === person.link?.role) ?? 'crew')
  return (
    <li className="grid grid-cols-1 items-center gap-x-6 gap-y-1 border-b border-rule py-3 sm:grid-cols-[1fr_auto]">
      <span>
        <b>{person.name}</b> <span className="small">{person.does}</span>
        <span className="small block">{person.link ? stateOf(person.link) : noLink}</span>
        {person.link && (
          <a className="textlink" href={props.origin + person.link.calendar}>
            {calendarAddress}
            <span className="sr-only"> {ofWords(person.name)}</span>
          </a>
        )}
      </span>
      <span className="flex flex-wrap items-center gap-x-4 gap-y-2">
        <label className="sr-only" htmlFor={id}>
          {whatMayDo(person.name)}
        </label>
        <select
          id={id}
          className="cell-input min-h-11! w-44!"
          value={role}
          onChange={(event) => setRole(event.target.value as LinkRole)}
        >
          {props.roles.map((one) => (
            <option key={one} value={one}>
              {one}: {MAY[one]}
            </option>
          ))}
        </select>
        <button type="button" className="btn" onClick={() => props.make(role)}>
          {person.link ? newCode : makeCode}
          <span className="sr-only"> {forWords(person.name)}</span>
        </button>
        {person.link && (
          <button type="button" className="btn quiet" onClick={props.shutOut}>
            {shutOutWords}
            <span className="sr-only"> {person.name}</span>
          </button>
        )}
      </span>
    </li>
  )
}

function stateOf({ role, until, phones, seen }: NonNullable<PersonRow['link']>): string {
  const came = seen === null ? notOpenedYet : `${phones === 1 ? '1 phone' : `${phones} phones`}, last seen ${seen}`
  return `${came}. As ${role}, ${until}.`
}
