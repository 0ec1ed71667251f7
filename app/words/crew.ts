// crew/crew-desk.tsx
export const peopleWords = 'People'
export const codesOpen = 'Codes open at'
export const codesOpenWhy = 'http works at once; https once the phone trusts the set, at /trust.'
export const codesForAll = (count: number) => `Codes for all ${count} who have none`
export const nobodyIsInThisShoot = 'Nobody is in this shoot yet. Add people on the Day page.'
export const noLink = 'No link.'
export const calendarAddress = 'Calendar address'
export const ofWords = (name: string) => `of ${name}`
export const whatMayDo = (name: string) => `What ${name} may do`
export const newCode = 'New code'
export const makeCode = 'Make a code'
export const forWords = (name: string) => `for ${name}`
export const shutOutWords = 'Shut out'
export const shutOutEnds =
  'Shutting somebody out ends their code for good, on every phone that opened it. A new code lets them in again.'
export const isOut = (name: string) => `${name} is out. A new code lets them in again.`
export const notOpenedYet = 'Not opened yet'

// crew/keys-desk.tsx
export const deviceKeys = 'Device keys'
export const deviceKeysWhy =
  'A thermometer or logger that can send over the network sends its readings with a key. Revoking ends a key for good; a new one is made at once.'
export const isRevoked = (name: string) => `The key of ${name} is ended. The device needs a new one to send again.`
export const nameOfDevice = 'Name of the device'
export const deviceNameWhy = 'Such as probe-1.'
export const makeKey = 'Make a key'
export const none = 'None.'
export const notUsedYet = 'not used yet'
export const lastUsed = (seen: string) => `last used ${seen}`
export const untilWords = (until: string) => `; until ${until}`
export const revokeWords = 'Shut out'
export const keyOf = 'The key of'
export const shownThisOnce = ', shown this once:'
export const sendReadings = 'Send readings to'
export const apiShootsLog = (shootId: string) => `/api/shoots/${shootId}/log`
export const withHeader = 'with the header'
export const authorizationBearer = (secret: string) => `Authorization: Bearer ${secret}`
export const and = 'and'
export const byDevice = (name: string) => `"by": {"device": "${name}"}`
export const inEachEntryApiOpenapi = 'in each entry; /api/openapi.json has the rest.'

// crew/page.tsx
export const crewLinks = 'Crew links'
export const calls = 'Calls'
export const eachCodeOpensThisShoots =
  'Each code opens this shoot’s board for one person, on as many phones as they hold. It is shown once. The calendar address lets a calendar read that person’s calls until they are shut out.'
export const thisComputerOnly =
  'Emberslate answers this computer only. To let the crew in by their phones, stop it and start it anew with npm start -- --crew.'
export const exportOrEraseWhat = 'Export or erase what is kept of a person'

// crew/person/page.tsx
export const whatIsKeptOfPerson = 'What is kept of a person'
export const everybody = 'Everybody'
export const everybodyWhoIsOrWas = 'Everybody who is or was in any version of this shoot.'
export const nobodyYet = 'Nobody yet.'
export const exportWords = 'Export'
export const oneJsonFileWithEvery = 'One JSON file with every text that tells of them and every line that they logged.'
export const saveWhatIsKept = 'Save what is kept'
export const erase = 'Erase'
export const erasingCannotBeUndone = 'Erasing cannot be undone'
export const notEvenByEarlierVersion =
  ', not even by an earlier version: it changes those too. It is done at the computer,'
export const withEmberslateStopped = 'with Emberslate stopped'
export const whileEmberslateRuns = 'while Emberslate runs'
export const by = ', by'
export const yes = (command: string) => `${command} --yes`
export const withoutYesItPrintsWhat = 'Without --yes it prints what stands below, and changes nothing.'

// crew/shown-codes.tsx
export const codesToScan = 'Codes to scan'
export const codeFor = (name: string) => `Code for ${name}`
export const printWords = 'Print'
export const putAway = 'Put away'
