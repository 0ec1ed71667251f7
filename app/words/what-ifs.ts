// shoots/what-if-of.ts
export const thisIsNoChange = (known: string) => `This is no change that can be weighed. Write one of ${known}.`

// shoots/what-ifs.ts
export const crew15MinLate = 'The crew comes 15 min late'
export const crew30MinLate = 'The crew comes 30 min late'
export const crew1HLate = 'The crew comes an hour late'
export const itIsColder = 'It is 8 °C colder'
export const windIsStronger = 'The wind is 5 m/s stronger'
export const itRainsLightly = 'It rains lightly'
export const itRainsHard = 'It rains hard'
export const heldOnChokedFire = 'Held 30 min on the choked fire'
export const heldInOven = 'Held 30 min in a warm oven'
export const heldInBox = 'Held 30 min in an insulated box'

// shoots/another-heat.tsx
export const anotherHeat = 'Another heat'
export const andAtAnotherHeat = 'And at another heat?'
export const insteadAt = 'Instead at'
export const compare = 'Compare'
export const planHasChanged = 'The plan has changed since: ask again.'
export const thePlan = 'The plan'
