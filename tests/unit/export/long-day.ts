import type { Layout } from '../../../lib/day/layout'
import { formatClock, fromIso, toIso } from '../../../lib/plan/clock'
import type { Shoot } from '../../../lib/plan/shoot'
import { later, minutes } from '../../../lib/units'
import { lambLayout, lambShoot } from './synthetic'

const WORDS = [
  'Čerstvé bylinky na prkně, ze šikmé dálky přes sklenici',
  'Mise en place, crème brûlée à côté, façade derrière',
  'Žluté světlo přes kouř, zpomaleně',
  'Hände schneiden Brot, Geräusch des Messers, Großaufnahme',
  'Smør, rødløg, åben låge, og røgen der trækker ud',
  'Garden wide',
]
const NAMES = ['Žofie Černohorská-Řeháková', 'Maximiliane Freifrau von Großenbrode', 'Íñigo Peñalver Núñez', 'Ann']

/** The lamb's day with so many shots in all, long names and letters with accents. Times are spread, not searched for. */
export function longDay(shots: number): { shoot: Shoot; layout: Layout } {
  const [shoot, layout] = [lambShoot(), lambLayout()]
  const more = Array.from({ length: Math.max(0, shots - (shoot.shots?.length ?? 0)) }, (_, i) => ({
    id: `more-${i}`,
    title: `${WORDS[i % WORDS.length]} ${i}`,
    free: true as const,
    place: ['bench under the apple trees', 'table', 'north wall'][i % 3],
    needs: ['camera', 'stylist'],
  }))
  const from = fromIso(layout.crewCall)
  const people = ['cam-1 stylist', 'cam-2', 'cam-1 presenter']
  const placed = more.map((shot, i) => {
    const start = later(from, minutes(20 + (i * 360) / Math.max(1, more.length)))
    const at = (min: number) => toIso(later(start, minutes(Math.round(min))), shoot.zone)
    return {
      id: shot.id,
      setupStart: at(-5),
      start: at(0),
      end: at(4),
      people: (people[i % 3] as string).split(' '),
      camera: [i % 2 ? 'B' : 'A'],
      hold: 'hard' as const,
    }
  })
  return {
    shoot: {
      ...shoot,
      title: 'Jehněčí kýta na dřevěném uhlí: přízemní zahrada u Černošic, Großaufnahmen, crème fraîche',
      people: shoot.people?.map((person, i) => ({ ...person, name: NAMES[i] })),
      shots: [...(shoot.shots ?? []), ...more],
    },
    layout: { ...layout, shots: [...layout.shots, ...placed] },
  }
}
/** The clock time of a placed shot, for tests. */
export const rolls = (shoot: Shoot, layout: Layout, id: string) =>
  formatClock(fromIso(layout.shots.find((shot) => shot.id === id)?.start ?? layout.start), shoot.zone)
