import 'server-only'
import { createHash, randomBytes } from 'node:crypto'

const BYTES = 16
export const SECRET = /^[A-Za-z0-9_-]{22}$/

/** 128 random bits as 22 letters, digits, "-" and "_". */
export const newSecret = () => randomBytes(BYTES).toString('base64url')
/** What is kept of a secret. It has 128 bits of chance, so a fast hash without salt cannot be guessed back. */
export const hashOf = (secret: string) => createHash('sha256').update(secret).digest('base64url')
/** Names a row; no secret. */
export const newRowId = () => randomBytes(6).toString('hex')
