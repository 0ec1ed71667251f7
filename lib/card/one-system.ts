import type { UnitSystem } from '../units'

/** "46 °C / 115 °F", "10 cm / 4¼ in", "64 to 69 °C / 147 to 155 °F". */
const NUMBERS = '[\\d.,−½¼¾]+(?:\\sto\\s[\\d.,−½¼¾]+)?'
const PAIR = new RegExp(`(${NUMBERS}\\s(?:°C|kg|g|cm|mm))\\s/\\s(${NUMBERS}\\s(?:°F|lb|oz|in))`, 'g')

/** What is printed for readers of both unit systems, for one who has chosen theirs. */
export const inOneSystem = (words: string, units: UnitSystem): string =>
  words.replace(PAIR, (_, metric: string, us: string) => (units === 'us' ? us : metric))
