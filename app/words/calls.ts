// calls/page.tsx
export const callsWords = 'Calls'
export const calendar = 'Calendar'
export const wholeShoot = 'The whole shoot'
export const yourCalendarSubscribes = 'Your calendar subscribes to'
export const calendarIsYours = '. It is yours alone: whoever has it reads your calls, until you are shut out.'
export const eachHasCalendar = 'Each person’s calendar has an address of its own, at Crew links.'
export const openAgainOrSubscribe =
  'Open it again when the day has changed, or subscribe to it on this computer: the calendar then follows.'
export const crewCallWrap = (crewCall: string, wrap: string) => `Crew call ${crewCall}, wrap ${wrap}.`
export const callSheetA4 = 'Call sheet, A4'
export const usLetter = 'US Letter'
export const callsThatHappenOnce = 'Calls that happen once'
/** Over the table of calls. */
export const howToReadCalls =
  'Each moment has a window from early to late. Stand by at the time given, or as soon as the probe reads the trigger.'
export const yourOwnCall = 'Your own call'
export const firstSetup = (first: string) => `first setup ${first}`
export const freeShotsInGaps = 'Free shots, in the gaps'
export const none = 'None.'
export const noCrew = 'Nobody is in the crew yet. Add people on the Day page.'
export const mealsWatchAndKit = 'Meals, watch and kit'
export const mealsWatchKit = 'Meals, watch, kit'
export const mealsWords = 'Meals:'
export const noneWords = 'none'
export const slipsWords = 'Slips'
export const oneSlipEach = 'One slip each'
export const careWords = 'Care'
export const emergencyWords = 'Emergency'
export const hospitalWords = 'Hospital'
export const allergensOnSet = 'Allergens on set'
export const parkingWords = 'Parking'
export const notesWords = 'Notes'
export const likelyWords = 'likely'
export const momentWords = 'moment'
export const shotWords = 'shot'
export const earlyToLate = 'early to late'
export const standBy = 'stand by at'
export const orCalled = 'or called at'
export const whoWords = 'who'
export const slipOf = (person: string) => `Slip of ${person}`

// calls/prep-and-risk.tsx
export const inUsLetter = (name: string) => `${name}, US Letter`
export const fuelWords = 'Fuel'
export const thermometersWords = 'Thermometers'
export const kitWords = 'Kit'
export const prepList = 'Prep list'
export const shoppingWords = 'Shopping'
export const kitIsOnPaper = 'Kit shot by shot stands on the printed list, with a column for the lens.'
export const riskSheet = 'Risk sheet'

// calls/producer-desk.tsx
export const emergencyNumber = 'Emergency number'
export const nearestHospital = 'Nearest hospital'
export const hospitalWhy = 'Name, street, minutes by car.'
export const personResponsible = 'Person responsible'
export const fireRestrictionsToday = 'Fire restrictions today'
export const fireRestrictionsWhy = 'What the fire service or the owner of the ground told you, and when.'
export const contact = (i: number) => `Contact ${i}`
export const role = 'Role'
export const telephone = 'Telephone'
export const whatOnlyProducerKnows = 'What only the producer knows'
export const emptyPrintsLine = 'An empty field prints as a line to write on.'
export const takeOut = 'Take out'
export const addContact = 'Add a contact'
