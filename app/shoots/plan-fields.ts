import { COOKER_KINDS } from '@/lib/model/cook'
import { CUSTOM } from '@/lib/model/custom-cut'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import { cookerName } from '@/lib/plan/moments'
import type { ShootDocument } from '@/lib/plan/shoot'
import { cutField, ownCutFields } from './cut-fields'
import { dayFields } from './day-fields'
import { asText, type DocumentField, degrees, type FieldGroup, optional, plain } from './document-fields'
import { fireGroup } from './fire-fields'
import { forgotten, type RememberedCooker, rememberedFields } from './remembered-field'

type StageDocument = { do?: string; [key: string]: unknown }
const stagesOf = (document: ShootDocument, cook: number) =>
  (valueAt(document, `/cooks/${cook}/stages`) as StageDocument[] | undefined) ?? []
const stageIndex = (document: ShootDocument, cook: number, kind: string) =>
  stagesOf(document, cook).findIndex((stage) => stage?.do === kind)

const stageAt = (document: ShootDocument, cook: number, kind: string) =>
  `/cooks/${cook}/stages/${stageIndex(document, cook, kind)}`

const COOKERS = COOKER_KINDS.map((kind) => [kind, cookerName(kind)] as const)

/** One figure for warming up and roasting: the preheat follows the roast. */
function cookerTemperature(document: ShootDocument, cook: number): DocumentField {
  const roast = `${stageAt(document, cook, 'roast')}/at`
  const preheat = `${stageAt(document, cook, 'preheat')}/at`
  const warmsUp = stageIndex(document, cook, 'preheat') >= 0
  return plain(`cooker-at-${cook}`, 'Cooker at', roast, {
    pointers: [roast, preheat],
    write: (edited, text) => (warmsUp ? setAt(setAt(edited, roast, text), preheat, text) : setAt(edited, roast, text)),
  })
}

function probeField(document: ShootDocument, cook: number): DocumentField {
  const roast = stageAt(document, cook, 'roast')
  return {
    key: `probe-${cook}`,
    label: 'Probe goes in',
    pointers: [`${roast}/probe`, `${roast}/turn`],
    options: [
      ['start', 'from the start'],
      ['turn', 'at half time, with the turn'],
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
    label: 'Sear at the end',
    pointers: [],
    options: [
      ...(inBath ? [] : [['yes', 'yes, as the cooker climbs'] as const]),
      ['direct', inBath ? 'yes, in a pan or over a fire' : 'yes, moved over direct heat'],
      ['no', 'no'],
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
    label: 'Needled, bladed or injected',
    why: 'Brine or blades carry inside what lay on the surface: other minimums count then.',
    pointers: [at],
    options: [
      ['no', 'no'],
      ['yes', 'yes'],
    ],
    read: (document) => (valueAt(document, at) === true ? 'yes' : 'no'),
    write: (document, text) => (text === 'yes' ? setAt(document, at, true) : removeAt(document, at)),
  }
}

function roastGroup(document: ShootDocument, cook: number, name: string): FieldGroup {
  const roast = `/cooks/${cook}/roast`
  const own = valueAt(document, `${roast}/cut`) === CUSTOM
  return {
    title: `The roast${name}`,
    fields: [
      cutField(cook, own),
      ...(own ? ownCutFields(cook) : []),
      plain(`mass-${cook}`, 'Weight', `${roast}/mass`),
      optional(`thickness-${cook}`, 'Thickness at the thickest', `${roast}/thickness`, {
        why: `Measure it as it lies: it counts most.${own ? '' : ' Empty means a typical one for the weight.'}`,
        gain: { cook, what: 'thickness' },
      }),
      optional(`width-${cook}`, 'Width', `${roast}/width`, { why: 'Across the same place. With the length it helps.' }),
      optional(`length-${cook}`, 'Length', `${roast}/length`, { gain: { cook, what: 'width-and-length' } }),
      plain(`start-${cook}`, 'Middle, when it goes on', `${roast}/start`, {
        why: 'About 4 °C straight from the fridge.',
        gain: { cook, what: 'start' },
      }),
      piercedField(cook),
    ],
  }
}

function heatGroup(
  document: ShootDocument,
  cook: number,
  name: string,
  cookers: readonly RememberedCooker[],
): FieldGroup {
  const stage = (kind: string, path: string, key: string, label: string, why?: string) =>
    stageIndex(document, cook, kind) < 0
      ? []
      : [plain(`${key}-${cook}`, label, `${stageAt(document, cook, kind)}${path}`, { why })]
  return {
    title: `The heat${name}`,
    fields: [
      plain(`cooker-${cook}`, 'Cooker', `/cooks/${cook}/cooker/kind`, {
        options: COOKERS,
        gain: { cook, what: 'cooker' },
        // What another cooker taught is not true of this one.
        write: (edited, text) => setAt(forgotten(edited, cook), `/cooks/${cook}/cooker/kind`, text),
      }),
      ...rememberedFields(document, cook, cookers),
      cookerTemperature(document, cook),
      probeField(document, cook),
      ...stage('roast', '/until/core', 'pull', 'Pull at', 'As the probe reads it.'),
      searField(document, cook),
      ...stage('sear', '/at', 'sear-at', 'Sear at'),
      ...stage('sear', '/until/core', 'off', 'Off the heat at', 'As the probe reads it.'),
      ...stage('rest', '/until/after', 'rest', 'Rest'),
    ],
  }
}

function dayGroup(document: ShootDocument): FieldGroup {
  const [slice, ...hours] = dayFields(document)
  const date = plain('date', 'Date', '/date', { type: 'date' })
  return { title: 'The day', fields: [...(slice ? [slice] : []), date, ...hours] }
}
const PLACE: FieldGroup = {
  title: 'The place',
  folded: true,
  fields: [
    plain('title', 'Title', '/title'),
    plain('zone', 'Time zone', '/zone', { suggestions: ['Europe/Dublin', 'Europe/Berlin', 'America/New_York'] }),
    degrees('lat', 'Latitude', '/place/lat', 'Degrees, north positive; for sunset and golden hour.'),
    degrees('lon', 'Longitude', '/place/lon', 'Degrees, east positive.'),
    optional('altitude', 'Altitude', '/place/altitude', { why: 'Water boils cooler higher up.' }),
    optional('air', 'Air', '/weather/air'),
    optional('wind', 'Wind', '/weather/wind'),
    optional('rain', 'Rain on the cooker', '/weather/rain', {
      options: [
        ['', 'none'],
        ['light', 'light'],
        ['heavy', 'heavy'],
      ],
      why: 'A wet lid loses heat: the fire takes more fuel and may not come to a hot sear.',
    }),
  ],
}

/** The form for a document, cook by cook: what is asked depends on the stages that are there. */
export function fieldGroups(document: ShootDocument, cookers: readonly RememberedCooker[] = []): readonly FieldGroup[] {
  const cooks = (valueAt(document, '/cooks') as { id?: string }[] | undefined) ?? []
  const named = (cook: { id?: string }) => (cooks.length > 1 ? `: ${cook.id}` : '')
  return [
    ...cooks.flatMap((cook, i) => [
      roastGroup(document, i, named(cook)),
      heatGroup(document, i, named(cook), cookers),
      fireGroup(document, i, named(cook)),
    ]),
    dayGroup(document),
    PLACE,
  ]
}
