/** The page for developers that shows every part of the screens in every state. */
export const pageTitle = 'Components'
export const lead =
  'Every part of the screens in every state, by day and at dusk: the parts themselves, on the newest shoot that can be laid out.'
export const needsShoot = 'There is no shoot to show them on. Make one, or start with the demo.'
export const byDay = 'Day'
export const atDusk = 'Dusk'
export const groups = {
  type: 'Type',
  tokens: 'Colours',
  buttons: 'Buttons and links',
  fields: 'Field: empty, filled, wrong, with a caution',
  save: 'Save line',
  lines: 'Lines: working, undo, status, note',
  said: 'Conflict, caution, finding',
  tables: 'Calls and shots',
  term: 'A word that explains itself',
  icons: 'Signs',
  pictures: 'Heat line and cut face',
  next: 'Board: what is next',
  link: 'Board: link and news',
  states: 'Board: states of a call',
  count: 'Board: countdown and wait line',
  thumbs: 'Board: thumb buttons and keypad',
  alert: 'Board: an alert, with sound and silent',
} as const
export const main = 'The one filled'
export const other = 'Another'
export const quiet = 'The way back'
export const off = 'Not now'
export const link = 'A link'
export const small = 'Second text, smaller'
export const sampleTitle = 'First slice about 20:47, in golden light.'
export const sampleLead = 'Roast, bones down, lid shut. After an hour turn it.'
export const sampleText = 'Stand by at the cooker from 19:41, or when the probe reads 43 °C.'
export const fieldLabel = 'Weight'
export const fieldWhy = 'As it lies in the kitchen, bone and all.'
export const fieldFault = '3.2 what? Write "3.2 kg" or "7 lb".'
export const fieldCaution = 'Frozen to the middle. Thaw it first: two days in the fridge for 3.2 kg.'
export const choiceLabel = 'Cooker'
export const dateLabel = 'Day'
export const working = 'Forecasting 256 cooks'
export const takenOut = 'Shot “Herbs” is taken out.'
export const status = 'No signal since 20:31.'
export const statusMore = 'Alerts go on from this phone. 6 entries wait here, none lost.'
export const statusAct = 'What waits'
export const conflictWhy = 'Vent smoke needs camera A while it is still at the table.'
export const conflictWay = 'Shoot it at 17:22 instead: costs nothing.'
export const caution = 'Charcoal outdoors only: it gives off carbon monoxide, also when it no longer flames.'
export const saying = 'Until the probe reads'
export const held = 'The server does not answer.'
export const refused = 'Two phones marked “off the heat”, 40 seconds apart. The earlier counts.'
export const alertAction = 'Open the vents wide'
