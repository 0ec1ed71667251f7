import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { MODEL_VERSION } from '../lib/model/version'

const FOLDER = 'tests/proofs'
const proofs = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.ts'))
  .map((file) => path.basename(file, '.ts'))

describe('proofs', () => {
  it.each(proofs)('%s has figures of this model version; "npm run prove" renews them', (name) => {
    const file = path.join(FOLDER, `${name}.json`)
    expect(existsSync(file), `run: npm run prove -- ${name}`).toBe(true)
    const record = JSON.parse(readFileSync(file, 'utf8'))
    expect(record).toMatchObject({ proof: name, modelVersion: MODEL_VERSION })
    expect(Object.keys(record.figures).length).toBeGreaterThan(0)
    expect(record.commit).toMatch(/^[0-9a-f]{40}/)
  })
})
