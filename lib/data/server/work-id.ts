import 'server-only'
import { createHash } from 'node:crypto'
import { MODEL_VERSION } from '../../model/version'
import { build } from '../env'

const hashOf = (...parts: readonly (string | Uint8Array)[]) => {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(part).update('\0')
  return hash.digest('hex')
}

/** Whose answers are alike: the same sources and numbers. While versions are exchanged each answers its own questions. */
export const codeName = (): string => hashOf(MODEL_VERSION, build()).slice(0, 8)

/** Names a question by what is asked, so that whoever asks the same finds the same work. A UUID in form. */
export function workId(queue: string, asked: Uint8Array): string {
  const hex = hashOf(queue, asked)
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20, 32)].join('-')
}
