import { newId } from './lines'

/** A whole entry of every kind, without id, time and name. */
export const RIGHT: Record<string, object> = {
  reading: { cook: 'hero', sensor: 'core-2', temp: '46.2 °C', hand: true },
  mark: { cook: 'hero', moment: 'off-heat' },
  'call-answer': { call: 'call-first-cut', answer: 'hand-over', to: 'cam-2' },
  take: {
    shot: 'first-cut',
    slate: '12',
    take: 3,
    camera: 'A',
    roll: 'start',
    timecode: '16:05:12:10',
    verdict: 'good',
    note: 'steam',
  },
  note: { text: 'fat cap lifted', shot: 'first-cut', cook: 'hero', state: 'sliced', photo: 'a1b2' },
  'plan-change': {
    version: 4,
    what: 'herbs 20 min later',
    moves: [
      {
        id: 'shot-herbs',
        setup: '2027-05-15T15:00Z',
        start: '2027-05-15T15:05Z',
        end: '2027-05-15T15:11Z',
        people: ['cam-2'],
        cameras: ['B'],
      },
    ],
    gone: ['meal-1'],
  },
  'what-if-adopted': {
    version: 5,
    what: 'pull at 54 °C',
    change: { cook: 'hero', core: '54 °C', cooker: '160 °C', rest: '25 min' },
  },
  'probe-check': {
    cook: 'hero',
    sensor: 'core',
    found: 'wrong',
    from: '2027-05-15T15:00Z',
    reads: '1.2 °C',
    should: '0 °C',
  },
  'camera-clock': { camera: 'A', timecode: '16:05:12' },
  'hold-start': { cook: 'hero', in: 'oven', temp: '65 °C' },
  'hold-end': { cook: 'hero' },
  'shot-state': { shot: 'first-cut', state: 'dropped', why: 'rain' },
  late: { for: '20 min', who: 'cam-1' },
  fire: { cook: 'hero', did: 'fed', fuel: '400 g' },
  food: { cook: 'hero', is: 'out' },
  meal: { is: 'begins', people: ['cam-1'] },
  correction: { corrects: newId(), put: { temp: '47 °C' }, why: 'typed wrong' },
}
