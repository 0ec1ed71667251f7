// shoots/what-if-of.ts
export const thisIsNoChange = (join: string) => `This is no change that can be weighed. Write one of ${join}.`

// shoots/what-ifs.ts
export const crewComesMinLate = 'The crew comes 15 min late'
export const crewComesMinLateWords = 'The crew comes 30 min late'
export const crewComesHourLate = 'The crew comes an hour late'
export const itIsCColder = 'It is 8 °C colder'
export const windIsMSStronger = 'The wind is 5 m/s stronger'
export const itRainsLightly = 'It rains lightly'
export const itRainsHard = 'It rains hard'
export const heldMinOnChokedFire = 'Held 30 min on the choked fire'
export const heldMinInWarmOven = 'Held 30 min in a warm oven'
export const heldMinInInsulatedBox = 'Held 30 min in an insulated box'

// shoots/another-heat.tsx
export const anotherHeat = 'Another heat'
export const andAtAnotherHeat = 'And at another heat?'
export const insteadAt = 'Instead at'
export const compare = 'Compare'
export const planHasChangedSinceAsk = 'The plan has changed since: ask again.'
export const thePlan = 'The plan'
