import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { UnitSystem } from '@/lib/units'
import * as words from '../words/plan'
import { answerGroup } from './answer-fields'
import { dayFields } from './day-fields'
import { asText, type DocumentField, degrees, type FieldGroup, measuring, optional, plain } from './document-fields'
import { fireGroup } from './fire-fields'
import type { RememberedCooker } from './remembered-field'

type StageDocument = { do?: string; [key: string]: unknown }
const stagesOf = (document: ShootDocument, cook: number) =>
  (valueAt(document, `/cooks/${cook}/stages`) as StageDocument[] | undefined) ?? []
const stageIndex = (document: ShootDocument, cook: number, kind: string) =>
  stagesOf(document, cook).findIndex((stage) => stage?.do === kind)

const stageAt = (document: ShootDocument, cook: number, kind: string) =>
  `/cooks/${cook}/stages/${stageIndex(document, cook, kind)}`

/** One figure for warming up and roasting: the preheat follows the roast. */
function cookerTemperature(document: ShootDocument, cook: number): DocumentField {
  const roast = `${stageAt(document, cook, 'roast')}/at`
  const preheat = `${stageAt(document, cook, 'preheat')}/at`
  const warmsUp = stageIndex(document, cook, 'preheat') >= 0
  return plain(`cooker-at-${cook}`, words.cookerAt, roast, {
    pointers: [roast, preheat],
    write: (edited, text) => (warmsUp ? setAt(setAt(edited, roast, text), preheat, text) : setAt(edited, roast, text)),
  })
}

function probeField(document: ShootDocument, cook: number): DocumentField {
  const roast = stageAt(document, cook, 'roast')
  return {
    key: `probe-${cook}`,
    label: words.probe,
    pointers: [`${roast}/probe`, `${roast}/turn`],
    options: [
      ['start', words.fromStart],
      ['turn', words.withTurn],
    ],
    read: (edited) => asText(valueAt(edited, `${roast}/probe/at`)) || 'start',
    write: (edited, text) => {
      const lead = valueAt(edited, `${roast}/probe/lead`)
      const withProbe = setAt(edited, `${roast}/probe`, lead === undefined ? { at: text } : { at: text, lead })
      return text === 'turn' && valueAt(withProbe, `${roast}/turn`) === undefined
        ? setAt(withProbe, `${roast}/turn`, { at: 'half' })
        : withProbe
    },
  }
}

function searField(document: ShootDocument, cook: number): DocumentField {
  const inBath = valueAt(document, `/cooks/${cook}/cooker/kind`) === 'water-bath'
  const at = `/cooks/${cook}/stages`
  return {
    key: `sear-${cook}`,
    label: words.sear,
    pointers: [],
    options: [
      ...(inBath ? [] : [['yes', words.searClimbs] as const]),
      ['direct', inBath ? words.searInPan : words.searDirect],
      ['no', words.no],
    ],
    read: (document) => {
      const sear = stagesOf(document, cook).find((stage) => stage?.do === 'sear')
      return sear === undefined ? 'no' : sear.over === 'direct' ? 'direct' : 'yes'
    },
    write: (document, text) => {
      const kept = stageIndex(document, cook, 'sear')
      const over = `${at}/${kept}/over`
      if (text === 'yes' && kept >= 0) return removeAt(document, over)
      if (text === 'direct' && kept >= 0) return setAt(document, over, 'direct')
      const stages = stagesOf(document, cook).filter((stage) => stage.do !== 'sear')
      if (text === 'no') return setAt(document, at, stages)
      const roast = stages.findLastIndex((stage) => stage.do === 'roast')
      const pull = asText((stages[roast]?.until as { core?: unknown } | undefined)?.core)
      const hot = { at: '320 °C', until: { core: pull }, max: '25 min' }
      const sear = { do: 'sear', ...hot, ...(text === 'direct' ? { over: 'direct' } : {}) }
      return setAt(document, at, [...stages.slice(0, roast + 1), sear, ...stages.slice(roast + 1)])
    },
  }
}

const piercedField = (cook: number): DocumentField => {
  const at = `/cooks/${cook}/roast/pierced`
  return {
    key: `pierced-${cook}`,
    label: words.pierced,
    why: words.piercedWhy,
    pointers: [at],
    options: [
      ['no', words.no],
      ['yes', words.yes],
    ],
    read: (document) => (valueAt(document, at) === true ? 'yes' : 'no'),
    write: (document, text) => (text === 'yes' ? setAt(document, at, true) : removeAt(document, at)),
  }
}

/** Further measures; each makes the windows narrower. */
function measureGroup(document: ShootDocument, cook: number, name: string): FieldGroup {
  const roast = `/cooks/${cook}/roast`
  const fields = [
    optional(`width-${cook}`, words.width, `${roast}/width`, { why: words.widthWhy }),
    optional(`length-${cook}`, words.length, `${roast}/length`, { gain: measuring(cook, 'width-and-length') }),
    plain(`start-${cook}`, words.start, `${roast}/start`, { why: words.startWhy, gain: measuring(cook, 'start') }),
    piercedField(cook),
  ]
  const at = (key: string) => asText(valueAt(document, `${roast}/${key}`))
  const sides = [
    ...(at('width') ? [words.width.toLowerCase()] : []),
    ...(at('length') ? [words.length.toLowerCase()] : []),
  ].join(' and ')
  const says = [
    words.startsAt(at('start')),
    ...(sides ? [words.sidesMeasured(sides)] : []),
    ...(valueAt(document, `${roast}/pierced`) === true ? [words.isPierced] : []),
  ]
  return { key: `measured-${cook}`, title: words.measured(name), fields, says: says.join(', ') }
}

function heatGroup(document: ShootDocument, cook: number, name: string): FieldGroup {
  const at = (kind: string, path: string) => `${stageAt(document, cook, kind)}${path}`
  const stage = (kind: string, path: string, key: string, label: string, why?: string) =>
    stageIndex(document, cook, kind) < 0 ? [] : [plain(`${key}-${cook}`, label, at(kind, path), { why })]
  const text = (kind: string, path: string) => asText(valueAt(document, at(kind, path)))
  const says = [
    words.roastsAt(text('roast', '/at')),
    ...(text('roast', '/until/core') ? [words.pulledAt(text('roast', '/until/core'))] : []),
    text('sear', '/at') ? words.searedAt(text('sear', '/at'), text('sear', '/until/core')) : words.noSear,
  ]
  return {
    key: `heat-${cook}`,
    title: words.heat(name),
    says: says.join(', '),
    fields: [
      cookerTemperature(document, cook),
      probeField(document, cook),
      ...stage('roast', '/until/core', 'pull', words.pull, words.asProbeReads),
      searField(document, cook),
      ...stage('sear', '/at', 'sear-at', words.searAt),
      ...stage('sear', '/until/core', 'off', words.off, words.asProbeReads),
    ],
  }
}

function sliceGroup(document: ShootDocument): FieldGroup {
  const [slice] = dayFields(document)
  const date = plain('date', words.date, '/date', { type: 'date', why: words.dateWhy })
  return { key: 'sliced', title: words.sliced, fields: [date, ...(slice ? [{ ...slice, why: words.sliceWhy }] : [])] }
}
function hoursGroup(document: ShootDocument): FieldGroup {
  const [, ...fields] = dayFields(document)
  const [call, wrap] = ['call', 'wrap'].map((key) => asText(valueAt(document, `/day/${key}`)))
  const says = [call ? words.calledAt(call) : words.calledLate, wrap ? words.wrapBy(wrap) : words.noWrap].join(', ')
  return { key: 'hours', title: words.hours, fields, says }
}
function placeGroup(document: ShootDocument): FieldGroup {
  const says = [document.title, document.zone].map(asText).filter(Boolean).join(', ')
  return { key: 'place', title: words.place, fields: PLACE, says }
}
const PLACE: readonly DocumentField[] = [
  plain('title', words.title, '/title'),
  plain('zone', words.zone, '/zone', { suggestions: words.zones }),
  degrees('lat', words.latitude, '/place/lat', words.latitudeWhy),
  degrees('lon', words.longitude, '/place/lon', words.longitudeWhy),
  optional('altitude', words.altitude, '/place/altitude', { why: words.altitudeWhy }),
  optional('air', words.air, '/weather/air'),
  optional('wind', words.wind, '/weather/wind'),
  optional('rain', words.rain, '/weather/rain', {
    options: [
      ['', words.noRain],
      ['light', words.lightRain],
      ['heavy', words.heavyRain],
    ],
    why: words.rainWhy,
  }),
]

export interface AskedWith {
  readonly cookers?: readonly RememberedCooker[]
  readonly units?: UnitSystem
}
/** The form for a document, cook by cook: what decides most stands open, the rest is folded and says what it holds. */
export function fieldGroups(
  document: ShootDocument,
  { cookers = [], units = 'metric' }: AskedWith = {},
): readonly FieldGroup[] {
  const cooks = (valueAt(document, '/cooks') as { id?: string }[] | undefined) ?? []
  const each = (group: (cook: number, name: string) => FieldGroup) =>
    cooks.map(({ id }, i) => group(i, cooks.length > 1 ? words.ofCook(asText(id)) : ''))
  return [
    ...each((i, name) => answerGroup(document, i, name, { cookers, units })),
    sliceGroup(document),
    ...each((i, name) => measureGroup(document, i, name)),
    ...each((i, name) => heatGroup(document, i, name)),
    ...each((i, name) => fireGroup(document, i, name)),
    hoursGroup(document),
    placeGroup(document),
  ]
}
