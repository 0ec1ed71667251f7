export function lanAddresses(): string[]
export function isAddress(name: string): boolean
export function isPrivateAddress(address: string): boolean
export function lanNames(given: string): string[]
export function hostNames(crew: boolean, given: string): string[]
