export function lanAddresses(): string[]
export function lanNames(given: string): string[]
export function hostNames(crew: boolean, given: string): string[]
