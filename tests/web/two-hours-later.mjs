/** Loaded before a server that is to believe that two hours have passed. */
const LATER_MS = 2 * 3_600_000
const { now } = Date
const later = () => now() + LATER_MS
globalThis.Date = new Proxy(Date, {
  construct: (date, parts, self) => Reflect.construct(date, parts.length > 0 ? parts : [later()], self),
  get: (date, name) => (name === 'now' ? later : Reflect.get(date, name)),
})
