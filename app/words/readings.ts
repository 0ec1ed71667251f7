// set/readings/choose-file.tsx
export const thereIsNothing = 'There is nothing in it. Choose the file with the readings.'
export const chooseCsv = 'Choose a CSV'
export const orDropItHere = 'or drop it here.'
export const orPasteItsLines = 'Or paste its lines'
export const linesOfFile = 'Lines of the file'
export const readThem = 'Read them'

// set/readings/column-match.tsx
export const columnWords = 'column'
export const firstValues = 'first values'
export const isWords = 'is'
export const unitWords = 'unit'
export const whatIs = (name: string) => `What ${name} is`
export const leftOut = 'left out'
export const time = 'time'
export const date = 'date'
export const ofWords = (cook: string) => ` of ${cook}`
export const unitOfWords = (name: string) => `Unit of ${name}`

// set/readings/devices.tsx
export const devicesAndTheirClocks = 'Devices and their clocks'
export const noReadingHasCome = 'No reading has come in yet.'
export const lastWords = (readings: string, last: string) => `${readings}, last ${last}`
export const onItsWay = 'on its way'
export const fromFilesSoFar = 'From files so far'
export const toWords = (from: string, to: string) => `${from} to ${to}`
export const takeBackWords = (count: number) => `Take ${count} back`
export const takenBackWords = (count: number) => `${count} taken back`
export const putThemInAgain = 'Put them in again'

// set/readings/file-questions.tsx
export const timeColumnHas = 'The time column has'
export const orderOfDate = 'Order of the date'
export const dateOfStart = 'Date of the start'
export const dateOfFirstRow = 'Date of the first row'
export const timeOfStart = 'Time of the start'
export const timeOfStartWhy = 'When the logger began, such as 11:30.'
export const zoneOfTimes = 'Zone of the times'
export const thereIsNoSuchZone = 'There is no such zone. Write one such as Europe/London.'
export const zoneWhy = 'Times with an offset of their own are taken as they are.'
export const readingsToKeep = 'Readings to keep'
export const readingsToKeepWhy = 'Of each probe. One in 30 s is plenty for the forecast.'
export const betweenColumns = 'Between columns'
export const decimalSign = 'Decimal sign'
export const namesOfColumns = 'Names of the columns'

// set/readings/file-text.ts
export const thisFileIsLarger = 'This file is larger than 20 MB. Export a part of the day from the logger.'
export const thisIsNotTextFile =
  'This is not a text file. Export the readings as CSV from the logger or the spreadsheet.'

// set/readings/from-file.tsx
export const readingFile = 'Reading the file.'

// set/readings/how-to-send.tsx
export const fromDevice = 'From a device'
export const fromDeviceLead =
  'A thermometer or logger that is on the network sends its own readings. It needs a key, made on'
export const crewLinks = 'Crew links'
export const keyNameIsDevice = '; its name there is the device’s name here. Without --crew no key is asked for.'
export const curlExample = (
  origin: string,
  shootId: string,
  body: string,
) => `curl ${origin}/api/shoots/${shootId}/log \\
  -H 'Authorization: Bearer KEY' -H 'Content-Type: application/json' \\
  -d '${body}'`
export const sent = 'sent'
export const sentWhy =
  'What the device’s clock says as it sends. The set reads from it how far that clock is off and puts every time right; nobody has to set it.'
export const at = 'at'
export const atWhy = 'When it was read, by the same clock, with its offset or Z. Late and out of order is fine.'
export const id = 'id'
export const idWhy =
  '26 letters and digits, a ULID, or 26 digits of your own that begin with 0 to 7: seconds since 1970 and a number of the probe will do. Sent again under the same id, a reading is kept once: when in doubt, send again.'
export const cookWords = 'cook'
export const sensor = 'sensor'
export const sensorWhy = 'core, cooker or air; further ones core-2, cooker-2 up to -9.'
export const temp = 'temp'
export const tempWhy = '“46.2 °C” or “115.2 °F”, from −40 to 700 °C.'
export const batches = 'Batches'
export const batchesWhy =
  '1 to 500 entries, at most 1 MB, in one request; after hours without a network send in pieces.'
export const answers = 'Answers'
export const answersWhy =
  '200: each entry by its id is “kept”, “known” (it was here before) or “refused” with a sentence. 422: nothing of it could be kept, and why. 401 or 403: the key. 429: wait as Retry-After says. 5xx or no answer: send the same again. All of it in'
export const openApiPath = '/api/openapi.json'

// set/readings/match-file.tsx
export const rowsWords = (count: number) => `, ${count} rows`
export const anotherFile = 'Another file'
export const whichColumnIsWhat = 'Which column is what?'
export const putIntoLog = (count: string) => `Put ${count} into the log`
export const sentSoFar = 'Sent so far'

// set/readings/preview.tsx
export const whatWillBeLogged = 'What will be logged'
export const timesAreSets = (zone: string) => `. Times are the set’s, ${zone}`
export const filesAre = (zone: string) => ` (the file’s are ${zone})`
export const lineNumbered = (line: number) => `Line ${line}:`
export const andMore = (count: number) => `and ${count} more.`
export const firstReadings = 'The first readings'
export const lineHead = 'line'
export const whenWords = 'when'
export const probe = 'probe'
export const reads = 'reads'

// set/readings/readings-desk.tsx
export const readings = 'Readings'
export const fromLoggersFile = 'From a logger’s file or from a device.'
export const backToLaptopsView = 'Back to the laptop’s view'
export const fromFile = 'From a file'

// set/readings/readings-picture.tsx
export const fromTo = (probes: string, first: string, last: string) => `${probes} from ${first} to ${last}`

// set/readings/send-entries.ts
export const unansweredPress = 'The server does not answer. Press again: what is in the log already is not doubled.'

// set/readings/use-logger-file.ts
export const thereIsNoTimeZone = (zone: string) => `There is no time zone “${zone}”. Write one such as Europe/London.`
