/** Texts of the plan's form, of a new shoot and of a saved one. */

// The six questions
export const cut = 'Cut'
export const cutWhy = 'It says how the meat is built, and where bone and fat lie.'
export const ownCut = 'a cut of your own'
export const weight = 'Weight'
export const weightWhy = 'Raw, with the bone. It gives the size where nothing is measured.'
export const thickness = 'Thickness at the thickest'
export const thicknessWhy = (typical: string | undefined) =>
  `It counts most: twice as thick takes about three times as long. Measure it as it lies.${typical ? ` Empty means ${typical}, as is typical.` : ''}`
export const cooker = 'Cooker'
export const cookerWhy = 'How long it warms up, how evenly it burns, how hot it can sear.'
export const howDone = 'How done'
export const howDoneWhy =
  'The middle when it is sliced. It sets when the meat leaves the heat. The authority is the one for food safety.'
export const asTemperaturesSay = 'as the temperatures below say'
export const date = 'Day'
export const dateWhy = 'For the light: sunset, golden hour, dark.'
export const slice = 'First slice at'
export const sliceWhy = 'All times are counted back from it. A time such as 18:30, or “golden hour”.'

// Groups
export const roast = (name: string) => `The roast${name}`
export const ofCook = (id: string) => `: ${id}`
export const sliced = 'When it is sliced'
export const measured = (name: string) => `Measured closer${name}`
export const heat = (name: string) => `The heat${name}`
export const fire = (name: string) => `Fire, rest and hold${name}`
export const hours = 'Hours of the day'
export const place = 'Title, place and weather'
export const folded = (title: string, says: string, cautions: number) =>
  `${title}: ${says}${cautions === 0 ? '' : cautions === 1 ? '. One caution' : `. ${cautions} cautions`}`

// What a folded group holds, in one line
export const startsAt = (temp: string) => `goes on at ${temp}`
export const sidesMeasured = (sides: string) => `${sides} measured`
export const isPierced = 'needled'
export const roastsAt = (temp: string) => temp
export const pulledAt = (temp: string) => `pulled at ${temp}`
export const searedAt = (temp: string, off: string) => `seared at ${temp} to ${off}`
export const noSear = 'no sear'
export const fuelOf = (mass: string) => `${mass} of fuel`
export const fedAsNeeded = 'fed as it needs'
export const restsFor = (time: string) => `rests ${time}`
export const heldFor = (time: string) => `held ${time}`
export const calledAt = (time: string) => `call at ${time}`
export const calledLate = 'called as late as fits'
export const wrapBy = (time: string) => `wrap by ${time}`
export const noWrap = 'no fixed wrap'

// A cut of one's own
export const ownName = 'What it is called'
export const ownNameIs = 'a cut of my own'
export const animal = 'Animal'
export const shape = 'Shape'
export const shapes = {
  round: 'round, like a rolled joint',
  oval: 'oval, like a loin',
  tapering: 'tapering, like a leg',
  block: 'a block, like a shoulder',
  flat: 'flat, like a brisket',
}
export const fat = 'Fat in the meat'
export const fatWhy = 'A share, such as 15 %. Empty means lean.'
export const bone = 'Bone'
export const boneWhy = 'A share of the weight, such as 20 %. Empty means none.'

// Measured closer
export const width = 'Width'
export const widthWhy = 'Across the same place. With the length it helps.'
export const length = 'Length'
export const start = 'Middle, when it goes on'
export const startWhy = 'About 4 °C straight from the fridge.'
export const pierced = 'Needled, bladed or injected'
export const piercedWhy = 'Brine or blades carry inside what lay on the surface: other minimums count then.'
export const yes = 'yes'
export const no = 'no'

// The heat
export const whichOne = 'Which one'
export const rememberedWhy = 'A cooker that is remembered makes the windows narrower.'
export const thisOne = 'This one'
export const anyOf = (kind: string) => `any ${kind}`
export const rememberedFrom = (name: string, cooks: string) => `${name}, remembered from ${cooks}`
export const asAfter = (name: string, cooks: string) => `${name}, as it was after ${cooks}`
export const oneCook = 'one cook'
export const cooks = (n: string) => `${n} cooks`
export const cookerAt = 'Cooker at'
export const probe = 'Probe goes in'
export const fromStart = 'from the start'
export const withTurn = 'at half time, with the turn'
export const pull = 'Pull at'
export const asProbeReads = 'As the probe reads it.'
export const sear = 'Sear at the end'
export const searClimbs = 'yes, as the cooker climbs'
export const searInPan = 'yes, in a pan or over a fire'
export const searDirect = 'yes, moved over direct heat'
export const searAt = 'Sear at'
export const off = 'Off the heat at'

// Fire, rest and hold
export const fuel = 'Fuel lit'
export const fuelWhy = 'Its mass, such as "2 kg". Empty means: fed as it needs.'
export const refuel = 'Fuel added later'
export const refuelWhy = 'Such as "1 kg at 3 h, 1 kg at 6 h", counted from meat on.'
export const deflector = 'Between meat and fire'
export const deflected = 'a deflector, or the meat lies aside'
export const nothing = 'nothing'
export const sheltered = 'Out of the wind'
export const isSheltered = 'yes, sheltered'
export const rest = 'Rest'
export const restsOn = 'Rests on'
export const rack = 'a rack'
export const board = 'a board'
export const restsUnder = 'Rests under'
export const tent = 'a tent of foil'
export const restsWhere = 'Rests where'
export const besideCooker = 'beside the cooker'
export const indoors = 'indoors'
export const outdoors = 'outdoors'
export const held = 'Held warm before the slice'
export const inCooker = 'in the cooker'
export const inOven = 'in a warm oven'
export const inBox = 'wrapped, in an insulated box'
export const heldAt = 'Held at'
export const heldTime = 'Held for'

// Hours of the day
/** Of the slice, where its page says all else. */
export const sliceAt = 'A time such as 18:30, or “golden hour”.'
export const goldenHour = 'golden hour'
export const daylight = 'daylight'
export const chance = 'How sure the slice must be'
export const chanceWhy =
  'Such as 80 %: the meat then goes on as late as that allows, and rests on until the time has come. Empty: it is sliced as soon as it may.'
export const call = 'Crew call, if it is fixed'
export const callWhy = 'A time such as 14:00. Empty: as late as fits.'
export const wrap = 'Wrap no later than'
export const wrapWhy = 'A time such as 22:30. What does not fit is dropped.'
export const overtime = 'Overtime, at most'
export const overtimeWhy =
  'How far past that wrap the day may run to save a shot, at a price: 45 min. Empty: not at all.'
export const nextCall = 'Next day’s call'
export const nextCallWhy =
  'A time such as 08:00. Each person’s rest until then is checked. Empty: nobody works the next day.'
export const turnaround = 'Rest between two days'
export const turnaroundWhy = 'The least between release and next call. Empty: 11 h.'
export const meal = 'Length of a meal'
export const mealWhy = 'Everybody eats within 6 h of their call. Empty: 30 min.'

// Title, place and weather
export const title = 'Title'
export const zone = 'Time zone'
export const zones = ['Europe/Dublin', 'Europe/Berlin', 'America/New_York']
export const latitude = 'Latitude'
export const latitudeWhy = 'Degrees, north positive; for sunset and golden hour.'
export const longitude = 'Longitude'
export const longitudeWhy = 'Degrees, east positive.'
export const altitude = 'Altitude'
export const altitudeWhy = 'Water boils cooler higher up.'
export const air = 'Air'
export const wind = 'Wind'
export const rain = 'Rain on the cooker'
export const rainWhy = 'A wet lid loses heat: the fire takes more fuel and may not come to a hot sear.'
export const noRain = 'none'
export const lightRain = 'light'
export const heavyRain = 'heavy'

// The form
export const cookPlan = 'Cook plan'
export const pageTitle = 'Plan'
export const shotsWent = (n: number) => `${n === 1 ? 'One shot' : `${n} shots`} went with the moment to be caught.`
export const sliceHeading = 'The slice'
export const whatToExpect = 'What to expect'

// plan/page.tsx

// shoots/heat-line-input.ts
export const mayNeverCome = (id: string) => `${id} may never come`
export const aboutTo = (likely: string, early: string, late: string) => `about ${likely}, ${early} to ${late}`
export const authoritysMinimum = (tempC: string, held: string) => `${tempC}${held}: the food-safety authority’s minimum`
export const heatLineOf = (title: string, words: string) => `Heat line of ${title}: first slice ${words}`

// shoots/preview-from.ts
export const safetyOf = (id: string) => `Safety: ${id}`
export const safetyTitle = 'Safety'
export const ovenOn = 'Oven on'
export const light = 'Light'
export const firstSlice = (words: string) => `First slice ${words}.`
export const itNeverGetsThere = 'It never gets there in most cooks: a hotter cooker or a cooler target would.'
export const middleWhenSliced = (likely: string, low: string) =>
  `When sliced the middle stands at about ${likely} (${low}).`
export const wouldClimb = (likely: string) => `Left whole it would climb to about ${likely}.`
export const itLosesAbout = (likely: string, low: string) => `It loses about ${likely} of its weight (${low}).`
