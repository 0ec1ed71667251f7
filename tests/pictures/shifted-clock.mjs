/** Loaded before a server that is to believe that it is another day; each of its threads by the same. */
const SHIFT_MS = Number(process.env.SHIFT_MS)
const { now } = Date
const shifted = () => now() + SHIFT_MS
globalThis.Date = new Proxy(Date, {
  construct: (date, parts, self) => Reflect.construct(date, parts.length > 0 ? parts : [shifted()], self),
  get: (date, name) => (name === 'now' ? shifted : Reflect.get(date, name)),
})
