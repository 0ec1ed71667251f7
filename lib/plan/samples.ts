import { setAt, shotsOf } from './edit'
import { type FirstAnswers, startingShoot } from './new-shoot'
import type { ShootDocument } from './shoot'

/** A cook to start from: filled in, with a crew, cameras and shots; every word of it is there to be changed. */
export interface Sample {
  readonly id: string
  readonly title: string
  /** What is worth filming about it. */
  readonly says: string
  readonly document: (around: Around) => ShootDocument
}
/** When and where the visitor would film. */
export type Around = Pick<FirstAnswers, 'date' | 'zone' | 'place'>

export type Whereabouts = Pick<Around, 'zone' | 'place'>
/** Where the first shoot of all is taken to be; every later one begins where the last was. */
export const NOWHERE_YET: Whereabouts = { zone: 'Europe/Dublin', place: { lat: 53.35, lon: -6.26, altitude: '20 m' } }

/** Weights, heats and hours are common practice, no source; the forecast says what becomes of them. */
export const SAMPLES: readonly Sample[] = [
  {
    id: 'leg-of-lamb',
    title: 'Leg of lamb over charcoal',
    says: 'Half a day in a kettle: slow first, then the vents go wide for the crust.',
    document: (around) =>
      withEmberWatch(
        startingShoot({
          ...around,
          title: 'Leg of lamb over charcoal',
          cut: 'lamb-leg-bone-in',
          mass: '3.2 kg',
          cooker: 'kettle-charcoal',
          done: 'medium-rare',
          slice: { at: '18:30' },
        }),
        '14:00',
        '21:30',
      ),
  },
  {
    id: 'pork-loin',
    title: 'Pork loin on the bone',
    says: 'A short day: on the table by lunch, with an even heat that asks for little.',
    document: (around) => {
      const day = startingShoot({
        ...around,
        title: 'Pork loin on the bone',
        cut: 'pork-loin-bone-in',
        mass: '2.4 kg',
        cooker: 'pellet',
        slice: { at: '13:00' },
      })
      // Long enough to film the carryover reading between the heat and the knife.
      return setAt(day, '/cooks/0/stages/2/until', { after: '20 min' })
    },
  },
  {
    id: 'whole-turkey',
    title: 'Whole turkey in the oven',
    says: 'A bird for a full table. No fire to watch, and a minimum that nobody may undercut.',
    document: (around) =>
      startingShoot({
        ...around,
        title: 'Whole turkey in the oven',
        cut: 'turkey-whole',
        mass: '6 kg',
        cooker: 'oven',
        slice: { at: '17:00' },
      }),
  },
  {
    id: 'brisket-overnight',
    title: 'Brisket overnight',
    says: 'Lit after midnight, watched by a night cook, pulled apart at noon.',
    document: (around) => overnight(around),
  },
]

/** Somebody stays by the embers until they are out; without, the day says that nobody is named for them. */
function withEmberWatch(day: ShootDocument, from: string, to: string): ShootDocument {
  const host = { id: 'host', roles: ['host'], hours: { from, to } }
  const watch = {
    id: 'ember-watch',
    title: 'In sight of the embers until they are out',
    cook: 'hero',
    from: 'off-heat',
    to,
    needs: ['host'],
  }
  return setAt(setAt(day, '/people/-', host), '/tasks/-', watch)
}

/** Nobody films these in the middle of the night. */
const AT_NIGHT = ['raw-beauty', 'seasoning', 'lighting', 'meat-on', 'probe-close']

/** A night cook keeps the heat while the crew sleeps, and a warm oven takes up what nobody can foresee of so long a cook. */
function overnight(around: Around): ShootDocument {
  const day = startingShoot({
    ...around,
    title: 'Brisket overnight',
    cut: 'beef-brisket',
    mass: '5.5 kg',
    cooker: 'offset-wood',
    done: 'tender',
    slice: { at: '12:00' },
  })
  const crew = { from: '07:00', to: '13:30' }
  const people = [
    { id: 'night-cook', roles: ['cook'], hours: { from: '00:00', to: '08:30' } },
    { id: 'presenter', roles: ['presenter', 'cook'], hours: crew },
    { id: 'cam-1', roles: ['camera'], hours: crew },
    { id: 'cam-2', roles: ['camera', 'sound'], hours: crew },
    { id: 'stylist', roles: ['stylist'], hours: crew },
  ]
  const shots = shotsOf(day).filter(({ id }) => !AT_NIGHT.includes(id))
  const held = { do: 'hold', in: 'box', until: { after: '2 h' }, max: '4 h' }
  const made = [
    ['/cooks/0/stages/-', held],
    ['/people', people],
    ['/shots', shots],
    ['/coverage/left', AT_NIGHT],
  ].reduce((edited, [at, value]) => setAt(edited, at as string, value), day)
  return withEmberWatch(made, '09:00', '16:00')
}

/** A sample on the day and at the place that stand in a document. */
export function sampleFor(id: string, { date, zone, place }: ShootDocument): ShootDocument {
  const sample = SAMPLES.find((one) => one.id === id)
  if (!sample) throw new RangeError(`no sample ${id}`)
  return sample.document({ date, zone, place } as Around)
}
