import { describe, expect, test } from 'vitest'
import { type CallSheetInput, callSheetOf } from '../../../lib/export/call-sheet'
import { riskSheetOf } from '../../../lib/export/risk-sheet'
import { sheetCare } from '../../../lib/export/sheet-care'
import { gapPages } from '../../../lib/print/call-gaps'
import { printCallSheet } from '../../../lib/print/call-sheet'
import { slipPagesOf } from '../../../lib/print/call-slips'
import { sheetsIn } from '../../../lib/print/render'
import { instant } from '../../../lib/units'
import { longDay } from './long-day'
import { clock, lambLayout, lambShoot, syntheticForecast } from './synthetic'

const input = (change: Partial<CallSheetInput> = {}): CallSheetInput => ({
  shoot: lambShoot(),
  layout: lambLayout(),
  forecasts: new Map([['hero', syntheticForecast()]]),
  units: 'metric',
  stamp: {
    revision: 3,
    saved: instant(Date.parse('2027-05-14T18:40:00+01:00')),
    forecast: instant(Date.parse('2027-05-14T18:38:00+01:00')),
  },
  cautions: ['Charcoal outdoors only: it gives off carbon monoxide, also when it no longer flames.'],
  ...change,
})
const sheet = callSheetOf(input())

describe('call sheet', () => {
  test('head: what, when, where, which revision and forecast', () => {
    expect(sheet).toMatchObject({
      title: 'Leg of lamb at the walled garden',
      day: 'Saturday 15 May 2027',
      revision: 'Revision 3, 14 May 18:40',
      forecast: 'forecast of 14 May 18:38',
      crewCall: '15:00',
      wrap: 'about 21:40, 22:04 at the late end',
      place: 'Walled kitchen garden, north gate; 53.35° N, 6.26° W',
      light: 'Golden hour from 20:26, sunset 21:18, dark 22:03. 14 °C, wind 3 m/s, humidity 65 %.',
    })
  })
  test('a call by the clock has its standby, one made live the probe or the earlier moment that makes it', () => {
    const row = (shot: string) => sheet.calls.find((call) => call.shot === shot)
    expect(row('3 Lighting the fire')).toEqual({
      likely: '16:07',
      moment: 'fire lit',
      shot: '3 Lighting the fire',
      window: '15:55 to 16:20',
      standby: '15:52',
      trigger: '',
      who: 'A, B, presenter',
    })
    expect(row('11 Probe at 46 °C, close')).toMatchObject({ standby: 'called live', trigger: '43 °C', who: 'B' })
    expect(row('13 Sear')).toMatchObject({ standby: 'called live', trigger: '6 min after vents open' })
    expect(row('5 Meat on the grate')).toMatchObject({ window: '', who: 'all' })
  })
  test('calls stand in the order of their likely times', () => {
    const times = sheet.calls.map((call) => call.likely)
    expect(times).toEqual([...times].sort())
    expect(times).toHaveLength(9)
  })
  test('a moment that may never come says so and stands last', () => {
    const layout = lambLayout()
    const calls = layout.calls.map((call) =>
      call.moment === 'sear-start' ? { ...call, window: { early: clock('19:24'), likely: null, late: null } } : call,
    )
    const last = callSheetOf(input({ layout: { ...layout, calls } })).calls.at(-1)
    expect(last).toMatchObject({ likely: '–', moment: 'sear', window: 'from 19:24, or never' })
  })
  test('what comes again and again is one line for whoever does it, and a gap that nobody fills says so', () => {
    const shoot = lambShoot()
    const every = 1800 as NonNullable<NonNullable<typeof shoot.tasks>[number]['every']>
    const vents = { id: 'vents', title: 'Vents', from: 'meat-on', to: 'pull', takes: every, every, needs: ['cook'] }
    const at = (start: string, people: string[]) => ({ id: 'vents', start: clock(start), end: clock('19:00'), people })
    const left = { id: 'fire-watch', start: clock('20:08'), end: clock('20:15'), people: [] }
    const tasks = [at('16:30', ['presenter']), left, at('17:00', ['cam-1']), at('17:30', ['presenter'])]
    const told = callSheetOf(
      input({ shoot: { ...shoot, tasks: [...(shoot.tasks ?? []), vents] }, layout: { ...lambLayout(), tasks } }),
    )
    expect(told.watch).toEqual([
      'Vents: presenter, 16:30, 17:30',
      'In sight of the fire: nobody is free, 20:08 to 20:15',
      'Vents: cam-1, 17:00',
    ])
  })
  test('everybody’s own call with the first setup, meals, watch, gaps, what is dropped and why', () => {
    expect(sheet.own.map((own) => [own.name, own.does, own.call, own.first])).toEqual([
      ['presenter', 'cook', '15:35', '15:52'],
      ['cam-1', 'camera A', '15:05', '15:20'],
      ['cam-2', 'camera B, sound', '15:35', '15:52'],
      ['stylist', '', '15:25', '15:40'],
    ])
    expect(sheet.meals).toBe('18:27 to 18:57, all')
    expect(sheet.watch).toEqual(['In sight of the fire: presenter, 16:07 to 20:08'])
    expect(sheet.gaps[0]).toEqual({ time: '15:29', shot: '1 Cooker and garden wall', who: 'A', place: '' })
    expect(sheet.gaps.map(({ shot }) => shot).join()).not.toContain('Lighting')
    expect(sheet.dropped).toEqual([
      '9 Vent smoke, long lens: It would hold camera B until 19:24. Shoot it at 17:22: costs nothing.',
    ])
  })
  test('slip: one person’s day in order, what happens once marked', () => {
    const slip = sheet.slips.find((s) => s.person === 'cam-2')
    expect(slip?.rows.map((row) => row.time)).toEqual([
      '15:35',
      '16:07',
      '17:12',
      '17:40',
      '18:12',
      '18:27',
      '19:45',
      '19:54',
      '20:29',
      '20:33',
      '20:43',
      '21:40',
    ])
    const probe = slip?.rows.find((row) => row.title.startsWith('11'))
    expect(probe?.once).toBe(true)
    expect(probe?.detail.replaceAll('\u00a0', ' ')).toBe('camera B. Stand by at 43 °C. 19:16 to 20:21')
  })
  test('what only the producer knows is printed, and is a line to write on where it is empty', () => {
    expect(sheet.producer).toEqual({
      emergency: null,
      hospital: null,
      allergens: null,
      contacts: [],
      parking: null,
      notes: null,
    })
    const callSheet = {
      emergency: '112',
      contacts: [
        { name: 'Žofie', role: 'producer', phone: '+353 1 555 0100' },
        { name: 'Gate', phone: '555' },
      ],
      parking: 'on the grass',
    }
    const told = callSheetOf(input({ shoot: { ...lambShoot(), callSheet } }))
    expect(told.producer).toMatchObject({
      emergency: '112',
      contacts: ['Žofie, producer: +353 1 555 0100', 'Gate: 555'],
      parking: 'on the grass',
    })
    expect(told.slips[0]?.rows[0]?.detail).toContain('on the grass')
  })
  test('names are short in tables, whole where two share the first', () => {
    const named = (names: readonly string[]) => {
      const people = lambShoot().people?.map((person, i) => ({ ...person, name: names[i] }))
      return callSheetOf(input({ shoot: { ...lambShoot(), people } })).calls[0]?.who
    }
    expect(named(['Žofie Nováková', 'Ann Lee', 'Bo', 'Cy'])).toBe('A, B, Žofie')
    expect(named(['Žofie Nováková', 'Žofie Černá', 'Bo', 'Cy'])).toBe('A, B, Žofie Nováková')
  })
  test('a caution is on the sheet unless the risk sheet holds it', () => {
    const said = (code: string) => ({ code, sentence: `${code}.` })
    expect(sheetCare([said('below-minimum'), said('ash'), said('defer')])).toEqual([
      'below-minimum.',
      'defer.',
      'The risk sheet hangs by the cooker: read it at call.',
    ])
    expect(sheetCare([said('defer')])).toEqual(['defer.'])
    const hazards = riskSheetOf({ shoot: lambShoot(), layout: lambLayout(), units: 'metric', revision: 1 })
      .groups.flatMap(({ lines }) => lines)
      .map(({ hazard, does }) => `${hazard} ${does}`)
      .join(' ')
    for (const held of ['Choked fire', 'Hot fat at the sear', 'Ash', 'probe is washed', 'chilled'])
      expect(hazards).toContain(held)
  })
  test('degrees and wind as the producer chose', () => {
    const us = callSheetOf(input({ units: 'us' }))
    expect(us.calls.find((call) => call.moment === 'pull temperature')?.trigger).toBe('109 °F')
    expect(us.light).toContain('57 °F, wind 7 mph')
  })
})

describe('call sheet on paper', { timeout: 60_000 }, () => {
  test.each(['A4', 'Letter'] as const)(
    'one sheet and two pages of slips on %s; the same bytes each time',
    async (paper) => {
      const bytes = await printCallSheet(sheet, paper)
      expect(sheetsIn(bytes)).toBe(3)
      const boxes =
        Buffer.from(bytes)
          .toString('latin1')
          .match(/\/MediaBox \[[^\]]*\]/g) ?? []
      expect(new Set(boxes.slice(1)).size).toBe(1)
      expect(boxes[1]).toContain(paper === 'A4' ? '[0 0 841.89' : '[0 0 792 612')
      expect(Buffer.from(bytes.subarray(0, 5)).toString()).toBe('%PDF-')
      if (paper === 'A4') expect(Buffer.compare(bytes, await printCallSheet(sheet, paper))).toBe(0)
    },
  )
  test.each([
    [14, 'A4', 3],
    [40, 'A4', 6],
    [40, 'Letter', 6],
    [80, 'A4', 9],
  ] as const)(
    '%i shots with long names and accents on %s: the crew on one page, gaps and slips on theirs',
    async (n, paper, most) => {
      const model = callSheetOf(input(longDay(n)))
      const [gaps, slips] = [gapPages(model.gaps, paper).length, slipPagesOf(model, paper).length]
      expect(sheetsIn(await printCallSheet(model, paper))).toBe(1 + gaps + slips)
      expect(1 + gaps + slips).toBeLessThanOrEqual(most)
    },
  )
  test('every shot in the gaps is on a page once, every row of a slip too', () => {
    const model = callSheetOf(input(longDay(80)))
    expect(gapPages(model.gaps, 'A4').flat()).toEqual(model.gaps)
    const rows = slipPagesOf(model, 'Letter').flatMap((page) => page.flatMap((part) => part.rows))
    expect(rows).toEqual(model.slips.flatMap((slip) => slip.rows))
  })
  test('what does not fit on one page runs over to a second', async () => {
    const dropped = Array.from({ length: 24 }, (_, i) => ({
      id: 'smoke',
      why: `Reason ${i}.`,
      wouldSave: 'Nothing saves it.',
    }))
    const long = callSheetOf(input({ layout: { ...lambLayout(), dropped } }))
    expect(sheetsIn(await printCallSheet(long, 'A4'))).toBe(4)
  })
})
