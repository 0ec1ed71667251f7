import { describe, expect, test } from 'vitest'
import { problemsForLayout } from '../../../lib/plan/parse'
import { faults, lamb, lambWith, read } from './shoots'

const COOK = '/cooks/0'
const ROAST = `${COOK}/stages/1`
const PREHEAT = { do: 'preheat', at: '150 °C' }
const HEAT = { do: 'roast', at: '150 °C', until: { core: '46 °C' } }
const SEAR = { do: 'sear', at: '320 °C', until: { core: '52 °C' } }
const REST = { do: 'rest', until: { after: '15 min' } }
/** The lamb with other stages and no shots that would miss a moment. */
const stages = (...list: unknown[]) => lambWith({ [`${COOK}/stages`]: list, '/shots': [], '/tasks': [] })
const shot = (more: Record<string, unknown>) => lambWith({ '/shots': [{ id: 'one', title: 'One', ...more }] })

/** One fault, at this place, in these words. */
const one = (document: unknown, pointer: string, sentence: string | RegExp) => {
  const found = faults(document)
  expect(found).toHaveLength(1)
  const [at, ...words] = (found[0] as string).split(': ')
  expect(at).toBe(pointer)
  if (typeof sentence === 'string') expect(words.join(': ')).toBe(sentence)
  else expect(words.join(': ')).toMatch(sentence)
}

describe('parseShoot: quantities', () => {
  test.each<[string, unknown, string | RegExp]>([
    [`${COOK}/roast/mass`, 3.2, '3.2 what? Write "3.2 kg" or "7 lb".'],
    [`${COOK}/roast/mass`, '3.2 °C', '"°C" is a unit of temperature; here stands a mass. Write "3.2 kg" or "7 lb".'],
    [`${COOK}/roast/mass`, '-3 kg', 'A roast cannot weigh -3 kg. Write its raw weight, such as "3.2 kg" or "7 lb".'],
    [`${COOK}/roast/mass`, '0 kg', /^A roast cannot weigh 0 kg/],
    [
      `${COOK}/roast/mass`,
      '0.1 kg',
      '0.1 kg is too small a roast: the forecast holds from 300 g to 30 kg (0.7 to 66 lb). Check the number and its unit.',
    ],
    [`${COOK}/roast/mass`, '60 kg', /^60 kg is too large a roast/],
    [
      `${COOK}/roast/start`,
      '40 °C',
      '40 °C is too warm for raw meat: it starts at 30 °C (86 °F) at most. Did you mean 40 °F?',
    ],
    [
      `${COOK}/roast/start`,
      '-18 °C',
      'Frozen to the middle. Thaw it first: 3.2 kg takes 2 days in the refrigerator, or 4 h in cold water changed every 30 min. Then write a start such as "4 °C".',
    ],
    [`${COOK}/roast/start`, '−2 °C', /^Part-frozen at −2 °C. Thaw it first/],
    [`${COOK}/roast/start`, '-300 °C', /^-300 °C is colder than any freezer/],
    [`${COOK}/roast/pierced`, 'yes', '"yes" is neither true nor false. Write true or false, without quotation marks.'],
    [
      `${COOK}/roast/thickness`,
      '12 mm',
      /^12 mm is too thin: leg of lamb, bone in, of 3.2 kg lies about \d+(\.5)? cm \(\d\.\d in\) thick. Measure the thickest place as it lies.$/,
    ],
    [`${COOK}/roast/thickness`, '12 m', /^12 m is out of range here/],
    [`${COOK}/roast/thickness`, '30 cm', /^30 cm is too thick: leg of lamb/],
    [`${ROAST}/at`, '1500 °C', /^1500 °C is no temperature for a cooker/],
    [`${ROAST}/at`, '650 °C', /Did you mean 650 °F\?$/],
    [
      `${ROAST}/until/core`,
      '140 °C',
      'The middle cannot reach 140 °C: its water boils near 100 °C (212 °F). Did you mean 60 °C (140 °F)?',
    ],
    [
      `${ROAST}/until/core`,
      '160 °C',
      'The cooker stands at 150 °C; the middle cannot pass it to reach 160 °C. Did you mean 71 °C (160 °F)?',
    ],
    [`${ROAST}/until/core`, '800 °C', /^A core of 800 °C is ash/],
    [`${ROAST}/until/core`, '10 °C', /^A core of 10 °C is not cooked/],
    [`${ROAST}/max`, '-5 min', /^-5 min is out of range here/],
    [
      `${ROAST}/probe/at`,
      'later',
      'The probe cannot go in at "later". Write "start", "turn" or a time after meat-on, such as "60 min".',
    ],
    [
      `${ROAST}/probe/lead`,
      '120 °C',
      "The probe's cable stands 120 °C and the roast is at 150 °C. Use a cable that stands more.",
    ],
    ['/weather/humidity', '140 %', /^140 % is out of range here/],
    ['/place/lat', 97, '97 is not a latitude. Write a number from -90 to 90.'],
    ['/place/lon', '6.26 W', '"6.26 W" is not a longitude. Write a number from -180 to 180.'],
    ['/seed', 1.5, /^1.5 is not a seed. Write a whole number/],
  ])('%s = %j', (pointer, value, sentence) => one(lambWith({ [pointer]: value }), pointer, sentence))

  test('a low cooker: the target above it, with what was meant', () =>
    one(
      stages({ ...HEAT, at: '80 °C', until: { core: '90 °C' } }, REST),
      `${COOK}/stages/0/until/core`,
      'The cooker stands at 80 °C; the middle cannot pass it to reach 90 °C. Write a core that it can reach, such as 60 °C (140 °F).',
    ))
})

describe('parseShoot: stages', () => {
  test.each<[string, unknown[], string, string | RegExp]>([
    ['no roast', [PREHEAT, REST], '', /^There is no roast stage/],
    [
      'sear before roast',
      [PREHEAT, SEAR, HEAT, REST],
      '/1',
      'The sear stands before the roast. Put it after. The order is preheat, roast, sear, then rest and hold.',
    ],
    [
      'a roast after the sear',
      [PREHEAT, HEAT, SEAR, { ...HEAT, until: { core: '60 °C' } }, REST],
      '/3',
      /^A roast stands after the sear/,
    ],
    ['rest before heat', [PREHEAT, REST, HEAT], '/2', /^The rest stands before the roast/],
    [
      'two preheats',
      [PREHEAT, PREHEAT, HEAT, REST],
      '/1',
      'There are two preheats; the fire is lit once. Take one out.',
    ],
    ['a late preheat', [HEAT, PREHEAT, REST], '/1', /^The preheat stands after the roast/],
    ['two sears', [HEAT, SEAR, SEAR, REST], '/2', /^There are two sears/],
    [
      'a cool sear',
      [HEAT, { ...SEAR, at: '140 °C' }, REST],
      '/1/at',
      /^The sear at 140 °C is cooler than the roast at 150 °C/,
    ],
    [
      'a core already passed',
      [HEAT, { ...SEAR, until: { core: '40 °C' } }, REST],
      '/1/until/core',
      'The sear ends at 40 °C, and the roast before it ends at 46 °C. Write a core above that.',
    ],
    [
      'a cap below the length',
      [HEAT, { ...REST, max: '5 min' }],
      '/1/max',
      'The rest lasts 15 min and may last 5 min at most. Write a "max" that is no shorter.',
    ],
    [
      'a probe at no turn',
      [{ ...HEAT, probe: { at: 'turn' } }],
      '/0/probe/at',
      /^The probe goes in at the turn, and no turn is planned/,
    ],
    [
      'two turns',
      [
        { ...HEAT, turn: { at: 'half' } },
        { ...HEAT, until: { core: '50 °C' }, turn: { at: 'half' } },
      ],
      '/1/turn',
      /one turn is planned/,
    ],
    ['charcoal from cold', [{ ...PREHEAT, cold: true }, HEAT], '/0/cold', /^Only an oven starts cold/],
    [
      'nothing that ends it',
      [{ ...HEAT, until: {} }],
      '/0/until',
      'What ends a stage holds one of "core", "after" or "cooker"; here is none.',
    ],
    [
      'two things that end it',
      [{ ...HEAT, until: { core: '46 °C', after: '2 h' } }],
      '/0/until',
      /here is more than one/,
    ],
    [
      'an unknown stage',
      [{ do: 'braise' }],
      '/0/do',
      '"braise" is not a stage. Write preheat, roast, sear, hold or rest.',
    ],
  ])('%s', (_, list, below, sentence) => one(stages(...list), `${COOK}/stages${below}`, sentence))
})

describe('parseShoot: names', () => {
  test.each<[string, unknown, string, string | RegExp]>([
    [
      'unknown cut',
      { [`${COOK}/roast/cut`]: 'lamb-leg' },
      `${COOK}/roast/cut`,
      /^"lamb-leg" is not in the catalogue of cuts. Did you mean "lamb-leg-bone-in" or "lamb-leg-boneless"\?$/,
    ],
    [
      'cut far from any',
      { [`${COOK}/roast/cut`]: 'pork-unknowable-thing' },
      `${COOK}/roast/cut`,
      /Write one such as "pork-/,
    ],
    [
      'cut in words',
      { [`${COOK}/roast/cut`]: 'Leg of lamb, bone in' },
      `${COOK}/roast/cut`,
      /Did you mean "lamb-leg-bone-in"\?$/,
    ],
    [
      'cooker misspelt',
      { [`${COOK}/cooker/kind`]: 'ketle-charcoal' },
      `${COOK}/cooker/kind`,
      '"ketle-charcoal" is not a cooker. Did you mean "kettle-charcoal"?',
    ],
    [
      'unknown key',
      { [`${COOK}/roast/thicknes`]: '12 cm' },
      `${COOK}/roast/thicknes`,
      '"thicknes" is not known here. Did you mean "thickness"?',
    ],
    [
      'unknown key far from any',
      { '/day/qqqqqq': 1 },
      '/day/qqqqqq',
      '"qqqqqq" is not known here. Known are call, wrap, slice, turnaround, meal, overtime and nextCall.',
    ],
    [
      'zone that does not exist',
      { '/zone': 'Europe/Dubin' },
      '/zone',
      'There is no time zone "Europe/Dubin". Did you mean "Europe/Dublin"?',
    ],
    [
      'zone by its city',
      { '/zone': 'New York' },
      '/zone',
      'There is no time zone "New York". Did you mean "America/New_York"?',
    ],
    ['zone as an offset', { '/zone': '+01:00' }, '/zone', /^There is no time zone "\+01:00"/],
    ['date that does not exist', { '/date': '2027-02-29' }, '/date', /^There is no 2027-02-29 in the calendar/],
    [
      'date the other way round',
      { '/date': '15.05.2027' },
      '/date',
      '"15.05.2027" is not a date. Write year, month and day, "2027-05-15".',
    ],
    [
      'clock time',
      { '/day/wrap': '25:00' },
      '/day/wrap',
      '"25:00" is not a time of day. Write hours and minutes, "18:30".',
    ],
    [
      'two people of one id',
      { '/people/3/id': 'cam-1' },
      '/people/3/id',
      'Another person is called "cam-1" already. Give this one its own id.',
    ],
    [
      'an id that is a role',
      { '/people/3/id': 'sound' },
      '/people/3/id',
      '"sound" is also a role of somebody else. Give this person another id.',
    ],
    ['an id with blanks', { '/cameras': [{ id: 'A' }, { id: 'A' }] }, '/cameras/1/id', /^Another camera is called "A"/],
    [
      'version',
      { '/emberslate': 2 },
      '/emberslate',
      'Version 2 of the shoot file is not known here. Write "emberslate": 1.',
    ],
    ['empty title', { '/title': '' }, '/title', 'The title is empty. Write at least one letter.'],
  ])('%s', (_, changes, pointer, sentence) => one(lambWith(changes as Record<string, unknown>), pointer, sentence))

  test.each([
    [
      '/title',
      '羊',
      '"羊" (U+7F8A) is not in the printed letters. Write it with Latin letters, digits and common signs.',
    ],
    ['/place/name', 'Garden 🔥', /^"🔥" \(U\+1F525\) is not in the printed letters/],
    ['/card/intro', 'α and β', /^"α" \(U\+03B1\)/],
    ['/card/ingredients/0/much', '⅟ cup', /^"⅟" \(U\+215F\)/],
    ['/shots/0/title', 'a\u200bb', /^The character U\+200B is not in the printed letters/],
  ])('a letter that the print lacks: %s = %s', (pointer, text, sentence) =>
    one(lambWith({ [pointer]: text }), pointer, sentence),
  )

  test('a letter and its accent typed apart are one letter', () =>
    expect(read(lambWith({ '/title': 'Cre\u0301me' })).title).toBe('Cr\u00e9me'))
})

describe('parseShoot: shots', () => {
  test.each<[string, Record<string, unknown>, string, string | RegExp]>([
    [
      'no form',
      {},
      '',
      'This shot has no time. It stands "at" a moment, "between" two, "from" and "to", "free": true, or in a "light".',
    ],
    [
      'two forms',
      { free: true, light: 'night' },
      '/light',
      'This shot stands "free" and "light" at once. Keep one of them.',
    ],
    ['half a span', { from: 'pull' }, '', 'This shot has a "from" and no "to". Write both.'],
    ['locked off without a span', { free: true, locked: true }, '/locked', /^Only a shot "from" a moment/],
    ['pinned at a moment', { at: { moment: 'pull' }, pin: '18:05' }, '/pin', /^A shot at a moment comes when the meat/],
    ['a pinned span', { from: 'meat-on', to: 'pull', pin: '18:05' }, '/pin', /^This shot stands from one edge/],
    [
      'pinned to no time',
      { free: true, pin: '6pm' },
      '/pin',
      '"6pm" is not a time of day. Write hours and minutes, "18:30".',
    ],
    ['roll at a moment', { at: { moment: 'pull' }, roll: '4 min' }, '/roll', /^A shot at a moment rolls/],
    ['unknown moment', { at: { moment: 'pul' } }, '/at/moment', '"pul" is not a moment. Did you mean "pull"?'],
    [
      'unknown edge',
      { between: ['meat-on', '7pm'] },
      '/between/1',
      '"7pm" is not a moment or a time of day. Write a moment such as "pull", or a time such as "18:30".',
    ],
    [
      'one edge',
      { between: ['meat-on'] },
      '/between',
      'This holds exactly two moments or times. Write ["meat-on", "pull"].',
    ],
    [
      'backwards',
      { between: ['pull', 'meat-on'] },
      '/between/1',
      '"meat-on" comes before "pull" in every cook. Change the two round.',
    ],
    ['unknown cook', { at: { moment: 'pull' }, cook: 'her' }, '/cook', 'There is no cook "her". Did you mean "hero"?'],
    ['unknown camera', { free: true, camera: 'C' }, '/camera', /^There is no camera "C"/],
    ['unknown role', { free: true, needs: ['camra'] }, '/needs/0', 'Nobody here is "camra". Did you mean "camera"?'],
    [
      'role nobody has',
      { free: true, needs: ['drone pilot'] },
      '/needs/0',
      /^Nobody here is "drone pilot". Give somebody the role/,
    ],
    ['after an unknown shot', { free: true, after: ['two'] }, '/after/0', /^There is no shot "two"/],
    ['after itself', { free: true, after: ['one'] }, '/after', /^"one" would have to stand after itself/],
  ])('%s', (_, more, below, sentence) => one(shot(more), `/shots/0${below}`, sentence))

  test('a cycle of "after" is told at every shot in it', () => {
    const ring = ['a', 'b', 'c'].map((id, i, all) => ({ id, title: id, free: true, after: [all[(i + 1) % 3]] }))
    expect(faults(lambWith({ '/shots': [...ring, { id: 'd', title: 'd', free: true, after: ['a'] }] }))).toHaveLength(3)
  })

  test('moments that the plan does not have', () => {
    const oven = { '/cooks/0/cooker/kind': 'oven', '/cooks/0/stages': [PREHEAT, HEAT, SEAR, REST], '/tasks': [] }
    const at = (moment: string) => [{ id: 'one', title: 'One', at: { moment } }]
    one(lambWith({ ...oven, '/shots': at('vents-open') }), '/shots/0/at/moment', /^No vents are opened in the oven/)
    one(lambWith({ ...oven, '/shots': at('turn') }), '/shots/0/at/moment', /has no turn/)
    const cold = { ...oven, '/cooks/0/stages': [{ ...PREHEAT, cold: true }, HEAT, REST] }
    one(lambWith({ ...cold, '/shots': at('cooker-steady') }), '/shots/0/at/moment', /starts cold/)
    const unseared = { '/cooks/0/stages': [PREHEAT, HEAT, REST], '/tasks': [] }
    one(
      lambWith({ ...unseared, '/shots': at('sear-start') }),
      '/shots/0/at/moment',
      /has no sear, so there is no "sear-start"/,
    )
    expect(faults(lambWith({ ...unseared, '/shots': at('off-heat') }))).toEqual([])
  })

  test('a task names people and moments under the same rules', () =>
    one(lambWith({ '/tasks/0/needs': ['cok'] }), '/tasks/0/needs/0', 'Nobody here is "cok". Did you mean "cook"?'))

  test('a layout with shots and no camera, or nobody to stand at it, is refused; the forecast needs neither', () => {
    const bare = read(lambWith({ '/cameras': [], '/people': [] }))
    expect(problemsForLayout(bare).map(({ pointer }) => pointer)).toEqual(['/cameras', '/people'])
    expect(problemsForLayout(read(lamb()))).toEqual([])
  })
})

describe('parseShoot: the day', () => {
  test.each<[string, Record<string, unknown>, string, string | RegExp]>([
    [
      'slice before the call',
      { call: '14:00', wrap: '22:30', slice: { at: '13:00' } },
      '/slice/at',
      'The first slice at 13:00 would come before the meat is on: the crew is called at 14:00. Write a slice between the call and the wrap at 22:30.',
    ],
    [
      'slice sooner than the rest alone',
      { call: '14:00', slice: { at: '14:10' } },
      '/slice/at',
      /^The first slice at 14:10 would come before the meat is on: from the call at 14:00 the timed stages alone take 15 min/,
    ],
    [
      'slice after the wrap',
      { call: '14:00', wrap: '22:30', slice: { at: '23:00' } },
      '/slice/at',
      /comes after the wrap at 22:30/,
    ],
    ['wrap at the call', { call: '14:00', wrap: '14:00' }, '/wrap', /^The day wraps at 14:00 as it is called/],
  ])('%s', (_, day, below, sentence) => one(lambWith({ '/day': day }), `/day${below}`, sentence))

  test('clock times of shots and tasks lie in the day and run forward', () => {
    const times = (from: string, to: string) =>
      lambWith({ '/shots': [{ id: 'one', title: 'One', between: [from, to] }], '/tasks': [] })
    one(
      times('12:00', 'pull'),
      '/shots/0/between/0',
      '12:00 is outside the day, which is from 14:00 to 22:30. Write a time within it.',
    )
    one(
      times('20:00', '19:00'),
      '/shots/0/between/1',
      'This ends at 19:00, before it begins at 20:00. Write a later end.',
    )
    expect(faults(times('19:00', '20:00'))).toEqual([])
    one(
      lambWith({
        '/day/wrap': '01:30',
        '/tasks/0': { id: 't', title: 'T', from: '00:30', to: '23:00', needs: ['cook'] },
      }),
      '/tasks/0/to',
      /^This ends at 23:00/,
    )
  })

  test('a time that the clock change skips is refused, one that occurs twice is not', () => {
    const night = (date: string, wrap: string) =>
      lambWith({ '/date': date, '/day': { call: '20:00', wrap }, '/shots': [] })
    one(
      night('2027-03-27', '01:30'),
      '/day/wrap',
      'There is no 01:30 that night: the clocks go forward and skip it. Write 02:30, or a time before the change.',
    )
    expect(faults(night('2027-03-28', '01:30'))).toEqual([])
    expect(faults(night('2027-10-30', '01:30'))).toEqual([])
    one(lambWith({ '/date': '2027-03-28', '/day': { call: '01:30' } }), '/day/call', /^There is no 01:30 that night/)
    one(lambWith({ '/date': '2027-03-27', '/tasks/0/to': '01:15' }), '/tasks/0/to', /^There is no 01:15 that night/)
  })
})

describe('parseShoot: files that would keep everybody waiting', () => {
  const keys = Object.fromEntries(Array.from({ length: 60_000 }, (_, i) => [`key-${i}`, 1]))
  test.each<[string, unknown, string, RegExp]>([
    ['keys without end', lambWith({ '/people': [keys] }), '/people/0', /^Up to here the file holds more than 20000/],
    ['a zone of a novel', lambWith({ '/zone': 'e'.repeat(900_000) }), '/zone', /^This text has 900000 letters/],
  ])('%s are refused before their meaning is read', (_, document, pointer, sentence) =>
    one(document, pointer, sentence),
  )
})
