export interface LockedPackage {
  readonly place: string
  readonly name: string
  readonly licence: string
  readonly version?: string
  readonly dev?: boolean
}
export function lockedPackages(lock?: object): readonly LockedPackage[]
export function isAllowed(name: string, expression: string): boolean
export function refusedLicences(packages?: readonly LockedPackage[]): readonly string[]
export function notices(packages?: readonly LockedPackage[]): string
