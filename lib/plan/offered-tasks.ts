import { laterClock } from './clock-text'
import { setAt, valueAt } from './edit'
import { burnsSolidFuel, type CookSketch, momentsOf } from './moments'
import type { ShootDocument } from './shoot'
import { listAt, peopleOf, sketchOf } from './sketch'

export type TaskDocument = {
  readonly id: string
  readonly title: string
  readonly from: string
  readonly to: string
  readonly [key: string]: unknown
}
/** A task that the plan could have and has not, with why; all of them common practice, no source. */
export interface OfferedTask {
  readonly task: TaskDocument
  readonly why: string
}
interface Context {
  readonly document: ShootDocument
  readonly cook: CookSketch
  readonly tasks: readonly TaskDocument[]
  readonly call: string | undefined
  readonly wrap: string | undefined
  /** The first of the roles that somebody here holds. */
  readonly role: (...wanted: readonly string[]) => string | undefined
}
type Offer = { readonly task: TaskDocument; readonly roles: readonly string[]; readonly why: string }

/** What the day's fire, cameras and sound ask for beside its shots; what was left stays left. */
export function offeredTasks(document: ShootDocument): OfferedTask[] {
  const cook = sketchOf(valueAt(document, '/cooks/0'))
  if (!cook) return []
  const people = peopleOf(document)
  const tasks = listAt<TaskDocument>(document, '/tasks')
  const held = new Set(people.flatMap(({ roles }) => roles))
  const text = (pointer: string) => valueAt(document, pointer) as string | undefined
  const context: Context = {
    document,
    cook,
    tasks,
    call: text('/day/call'),
    wrap: text('/day/wrap'),
    role: (...wanted) => wanted.find((role) => held.has(role)),
  }
  const gone = new Set([...tasks.map(({ id }) => id), ...leftOf(document)])
  return [...fireOffers(context), ...foodOffers(context), ...cameraOffers(context)].flatMap(({ task, roles, why }) => {
    const role = context.role(...roles)
    return role === undefined || gone.has(task.id) ? [] : [{ task: { ...task, needs: [role] }, why }]
  })
}

const AT_THE_FIRE = ['cook', 'second-cook', 'presenter', 'camera']
/** Strike begins so long before the wrap; the fire is out by then. */
const STRIKE_MIN = 30

function fireOffers({ document, cook, tasks, wrap }: Context): Offer[] {
  if (!burnsSolidFuel(cook.cooker.kind)) return []
  const has = (from: string) => tasks.some((t) => t.from === from && t.id.includes('watch'))
  const outBy = wrap === undefined ? 'first-slice' : laterClock(wrap, -STRIKE_MIN)
  const of = { cook: cook.id }
  const watch: Offer = {
    task: { id: 'fire-watch', title: 'In sight of the fire', ...of, from: 'fire-lit', to: 'off-heat' },
    roles: AT_THE_FIRE,
    why: 'A burning fire is never left alone.',
  }
  const ash: Offer = {
    task: { id: 'ash-watch', title: 'In sight of the fire until it is out', ...of, from: 'off-heat', to: outBy },
    roles: ['runner', 'assistant', 'second-cook', 'camera', ...AT_THE_FIRE],
    why: 'A fire burns on after the meat is off it, and the cook is at the table then: hand it over.',
  }
  return [
    ...(tasks.some((t) => t.from === 'fire-lit' && t.takes === undefined) ? [] : [watch]),
    ...(has('off-heat') ? [] : [ash]),
    {
      task: {
        id: 'light-fire',
        title: 'Light the fire',
        ...of,
        from: 'fire-lit',
        to: 'cooker-steady',
        takes: '10 min',
      },
      roles: AT_THE_FIRE,
      why: 'Whoever lights it has both hands full for about ten minutes.',
    },
    {
      task: {
        id: 'vent-check',
        title: 'Vents and dial',
        ...of,
        from: 'meat-on',
        to: 'pull',
        delay: '30 min',
        takes: '2 min',
        every: '30 min',
      },
      roles: AT_THE_FIRE,
      why: 'A fire drifts: somebody looks at it every half an hour.',
    },
    ...refuelOffers(document, of),
    ...(wrap === undefined ? [] : [ashBin(of, wrap)]),
  ]
}

function refuelOffers(document: ShootDocument, of: { cook: string }): Offer[] {
  return listAt<{ at?: unknown; add?: unknown }>(document, '/cooks/0/cooker/refuel').flatMap(({ at, add }, i) =>
    typeof at !== 'string'
      ? []
      : [
          {
            task: {
              id: `refuel-${i + 1}`,
              title: `Add ${add} of fuel`,
              ...of,
              from: 'meat-on',
              to: 'off-heat',
              delay: at,
              takes: '5 min',
            },
            roles: AT_THE_FIRE,
            why: `The plan adds ${add} of fuel ${at} after the meat is on.`,
          },
        ],
  )
}
const ashBin = (of: { cook: string }, wrap: string): Offer => ({
  task: {
    id: 'ash-bin',
    title: 'Ash into a lidded metal bin',
    ...of,
    from: 'off-heat',
    to: wrap,
    delay: '60 min',
    takes: '10 min',
  },
  roles: ['second-cook', 'cook', 'camera', 'presenter'],
  why: 'Ash stays hot for a day: cold, or in a lidded metal bin, before anybody leaves.',
})

function foodOffers({ cook }: Context): Offer[] {
  if (cook.cooker.kind === 'water-bath') return []
  return [
    {
      task: {
        id: 'baste',
        title: 'Baste',
        cook: cook.id,
        from: 'meat-on',
        to: 'pull',
        delay: '45 min',
        takes: '2 min',
        every: '45 min',
        lid: 'open',
      },
      roles: ['cook', 'second-cook', 'presenter'],
      why: 'Only if the recipe bastes: each time the lid comes off and the cook is longer for it.',
    },
  ]
}

function cameraOffers({ document, cook, call, wrap }: Context): Offer[] {
  const from = call ?? 'fire-lit'
  const sound: Offer = {
    task: {
      id: 'room-tone',
      title: 'Room tone, everybody quiet',
      cook: cook.id,
      from: 'meat-on',
      to: 'off-heat',
      takes: '2 min',
    },
    roles: ['sound'],
    why: 'A minute of the place with nobody talking joins every cut.',
  }
  const copies: Offer[] =
    wrap === undefined || !momentsOf(cook).includes('first-slice')
      ? []
      : [
          {
            task: {
              id: 'two-copies',
              title: 'Two copies of every card',
              cook: cook.id,
              from: 'first-slice',
              to: wrap,
              delay: '20 min',
              takes: '30 min',
            },
            roles: ['data', 'camera'],
            why: 'The roast cannot be cooked again: two copies before the wrap.',
          },
        ]
  return [
    {
      task: {
        id: 'camera-clocks',
        title: 'Camera clocks against the slate',
        from,
        to: wrap ?? 'first-slice',
        takes: '5 min',
        every: '5 h',
      },
      roles: ['camera'],
      why: 'At the call and again after each meal: a clock that drifts loses the moment in the cut.',
    },
    ...lockedShots(document).map(swapOffer),
    sound,
    ...copies,
  ]
}

type Locked = {
  readonly id: string
  readonly title: string
  readonly cook?: string
  readonly from: string
  readonly to: string
}
const lockedShots = (document: ShootDocument) =>
  listAt<Locked & { locked?: unknown }>(document, '/shots').filter(
    ({ locked, from, to }) => locked === true && typeof from === 'string' && typeof to === 'string',
  )
const swapOffer = ({ id, title, cook, from, to }: Locked): Offer => ({
  task: {
    id: `swap-${id}`.slice(0, 40),
    title: `Battery and card: ${title}`.slice(0, 120),
    ...(cook === undefined ? {} : { cook }),
    from,
    to,
    delay: '90 min',
    takes: '5 min',
    every: '90 min',
  },
  roles: ['camera'],
  why: 'Batteries and cards of a locked-off camera last about 90 min.',
})

const leftOf = (document: ShootDocument): readonly unknown[] => {
  const left = valueAt(document, '/coverage/tasksLeft')
  return Array.isArray(left) ? left : []
}

export const takeTask = (document: ShootDocument, { task }: OfferedTask): ShootDocument =>
  setAt(document, '/tasks', [...listAt<TaskDocument>(document, '/tasks'), task])

/** Not wanted: it is not offered again. */
export const leaveTask = (document: ShootDocument, { task }: OfferedTask): ShootDocument =>
  setAt(document, '/coverage/tasksLeft', [...leftOf(document), task.id])
