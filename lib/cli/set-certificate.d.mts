export interface SetCertificate {
  readonly certificate: string
  readonly key: string
  readonly names: readonly string[]
  readonly changed: boolean
  readonly newAuthority: boolean
}
export function setCertificate(folder: string, given: string, serving?: boolean): Promise<SetCertificate>
