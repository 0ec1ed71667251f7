import { expect, it } from 'vitest'
import { isByClock } from '../../../lib/day/by-the-clock'
import { gardenShoot } from './garden-shoot'

const at = (id: string, moment: string) => ({ id, title: id, needs: ['camera'], at: { moment } })
const shot = (id: string, more: object) => ({ id, title: id, needs: ['camera'], free: true, roll: '5 min', ...more })
const { shots = [] } = gardenShoot({
  shots: [
    at('match', 'fire-lit'),
    shot('beside-match', { after: ['match'] }),
    at('cut', 'first-slice'),
    shot('plate', { after: ['cut'] }),
    shot('last-bite', { after: ['plate', 'garden'] }),
    shot('crust', { state: 'hot' }),
    shot('garden', {}),
  ],
})

it('The fire and what hangs on no cook are told for an hour; what follows a shot of the cook is not', () => {
  expect(shots.filter((s) => isByClock(s, shots)).map((s) => s.id)).toEqual(['match', 'beside-match', 'garden'])
})
