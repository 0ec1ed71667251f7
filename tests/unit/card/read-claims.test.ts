import { describe, expect, it } from 'vitest'
import { readClaims } from '../../../lib/card/read-claims'

const H = 3600
const read = (sentence: string) => readClaims(sentence, { cook: 'hero', step: 's', massKg: 3.2 })
/** "kind low high unit" of each claim, and what the claim says where it is a word. */
const told = (sentence: string) =>
  read(sentence).map((c) =>
    c.unit === 'word' ? `${c.kind} ${c.says}` : `${c.kind} ${round(c.low)} ${round(c.high)} ${c.unit}`,
  )
const round = (n: number) => Math.round(n * 100) / 100

const BOUND: readonly (readonly [string, readonly string[]])[] = [
  ['Light the fire and let the cooker settle at 150 °C / 300 °F.', ['cooker-temperature 150 150 degC']],
  ['Heat the oven to 325°F.', ['cooker-temperature 162.78 162.78 degC']],
  ['Warming up takes three quarters of an hour.', ['warm-up-time 2700 2700 s']],
  [
    'Roast at 150 °C until the middle reads 46 °C: 2 h 05 to 3 h 10.',
    ['cooker-temperature 150 150 degC', 'pull-temperature 46 46 degC', `roast-time 7500 11400 s`],
  ],
  [
    'Roast for two and a half hours, then rest it for half an hour.',
    ['roast-time 9000 9000 s', 'rest-time 1800 1800 s'],
  ],
  ['It roasts an hour and a half.', ['roast-time 5400 5400 s']],
  ['Roast it 1½ h.', ['roast-time 5400 5400 s']],
  ['Roast it for 1 h 40.', ['roast-time 6000 6000 s']],
  ['Cook between two and three hours.', ['roast-time 7200 10800 s']],
  ['Expect this 2 h 05 to 3 h 10 after the lamb went on.', ['roast-time 7500 11400 s']],
  [
    'Allow 20 minutes per pound.',
    [`roast-time ${round((20 * 60 * 3.2) / 0.45359237)} ${round((20 * 60 * 3.2) / 0.45359237)} s`],
  ],
  ['At 115 °F in the middle, open the vents wide.', ['pull-temperature 46.11 46.11 degC']],
  [
    'Sear, turning, at about 340 °C / 645 °F, until the middle reads 52 °C: 10 to 15 minutes.',
    ['sear-temperature 340 340 degC', 'off-heat-temperature 52 52 degC', 'sear-time 600 900 s'],
  ],
  ['Take it off at 126 °F.', ['off-heat-temperature 52.22 52.22 degC']],
  ['Rest twenty-five minutes on a board.', ['rest-time 1500 1500 s']],
  ['After 15 minutes of rest, carve.', ['rest-time 900 900 s']],
  ['The middle climbs to about 57 °C by itself.', ['sliced-temperature 57 57 degC']],
  ['The middle climbs 3 to 5 °C while it rests.', ['carryover-rise 3 5 K']],
  ['The middle climbs −3 °C.', ['carryover-rise -3 -3 K']],
  ['Sear it 10-15 min.', ['sear-time 600 900 s']],
  ['It rises by another 9 °F.', ['carryover-rise 5 5 K']],
  ['An hour in all.', [`total-time ${H} ${H} s`]],
  ['From lighting the fire to the slice it takes about 4 hours 15 minutes.', ['total-time 15300 15300 s']],
  ['After an hour turn it, and push the probe into the middle.', [`turn-time ${H} ${H} s`]],
  ['Medium-rare, sliced at 57 °C.', ['doneness medium-rare', 'sliced-temperature 57 57 degC']],
  ['It loses 17 to 21 % of its weight.', ['yield 0.17 0.21 1']],
  ['It keeps 80 per cent of its weight.', ['yield 0.2 0.2 1']],
  ['Gives 2.1 kg / 4.6 lb of cooked meat.', ['yield 2.1 2.1 kg']],
  ['Serves eight to ten.', ['yield 8 10 people']],
  ['Enough for 12 people.', ['yield 12 12 people']],
  ['Pink from edge to edge.', ['edge-to-edge all']],
  ['Pink for all but the outer 12 mm.', ['edge-to-edge 0.01 0.01 m']],
  ['60 % of the face stayed below 65 °C.', ['edge-to-edge 0.6 0.6 1']],
  ['A rosy leg is safe for everybody at 52 °C.', ['safety 52 52 degC']],
  ['Perfectly safe.', ['safety safe']],
  ['The minimum is 63 °C / 145 °F, then 3 minutes.', ['safety 63 63 degC', 'safety 180 180 s']],
  [
    'A leg of 3.2 kg, 12 cm thick, straight from the fridge at 4 °C.',
    ['mass 3.2 3.2 kg', 'thickness 0.12 0.12 m', 'start-temperature 4 4 degC'],
  ],
  ['Chill what is left within 2 hours.', ['keeping -Infinity 7200 s']],
  ['It keeps at least 80 % of its weight.', ['yield -Infinity 0.2 1']],
  ['Never below 63 °C in the middle when sliced.', ['sliced-temperature 63 Infinity degC']],
  ['Season it with herbs.', []],
  ['On one side of the grate, a medium heat.', []],
]
describe('read claims', () => {
  it.each(BOUND)('"%s"', (sentence, claims) => {
    expect(told(sentence)).toEqual(claims)
  })

  it.each([
    ['The juiciest lamb you will eat.', 'taste'],
    ['Dinner at 18:30.', 'clock'],
    ['Cook it at 150 degrees.', 'degrees'],
    ['Keep it hot for an hour.', 'storage'],
    ['Turn it every 10 minutes.', 'how-often'],
    ['Wait 20 minutes.', 'time'],
    ['Add 35 g of salt.', 'amount'],
    ['Use 7 skewers.', 'count'],
    ['Make it 20 % better.', 'share'],
  ])('a number that nothing binds is a claim that cannot be checked: "%s"', (sentence, says) => {
    expect(read(sentence).map((c) => `${c.kind} ${c.says}`)).toContain(`unbound ${says}`)
  })

  it('keeps bounds open and counts their words in', () => {
    expect(read('Done in under three hours of roasting.')).toMatchObject([
      { kind: 'roast-time', hedge: 'at-most', low: Number.NEGATIVE_INFINITY, high: 3 * H, words: 'under three hours' },
    ])
    expect(read('Rest it at least 20 minutes.')).toMatchObject([
      { kind: 'rest-time', hedge: 'at-least', low: 1200, high: Number.POSITIVE_INFINITY, words: 'at least 20 minutes' },
    ])
  })

  it('two unit systems that disagree are two claims', () => {
    expect(told('Let the oven settle at 150 °C / 350 °F.')).toEqual([
      'cooker-temperature 150 150 degC',
      'cooker-temperature 176.67 176.67 degC',
    ])
  })

  it('the words of a claim stand where it says they stand', () => {
    for (const [sentence] of BOUND)
      for (const claim of read(sentence))
        expect(sentence.slice(claim.start, claim.start + claim.words.length)).toBe(claim.words)
  })

  it('what the sentence before was about binds a bare time', () => {
    const claims = readClaims('About 50 minutes.', { cook: 'hero', step: 'fire', massKg: 3.2, before: 'warm' })
    expect(claims).toMatchObject([{ kind: 'warm-up-time', low: 3000, id: 'fire.warm-up-time' }])
  })
})
