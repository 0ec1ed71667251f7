import 'server-only'
import { X509Certificate } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { databaseUrl, dataFolder } from '../env'

export interface SetAuthority {
  readonly der: Buffer
  /** SHA-256, in pairs, as phones show it. */
  readonly fingerprint: string
  readonly subject: string
  readonly ends: number
}

/** The open part of this computer's certificate authority; nothing where the start command made none, as in server mode. */
export async function setAuthority(): Promise<SetAuthority | undefined> {
  if (databaseUrl() !== null) return undefined
  const text = await readFile(path.join(dataFolder(), 'door', 'tls.json'), 'utf8').catch(() => undefined)
  if (text === undefined) return undefined
  const { authority } = JSON.parse(text) as { authority: { certificate: string } }
  const certificate = new X509Certificate(authority.certificate)
  return {
    der: certificate.raw,
    fingerprint: certificate.fingerprint256,
    subject: certificate.subject.replace(/^CN=/, ''),
    ends: Date.parse(certificate.validTo),
  }
}
