import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { isAllowed, lockedPackages, notices, refusedLicences } from '../../../lib/cli/licences.mjs'
import { broughtBy, lock } from './lock-file'

const ours = JSON.parse(readFileSync('package.json', 'utf8'))
const direct: Record<string, string> = { ...ours.dependencies, ...ours.devDependencies }
/** Programs that these packages would run at installing; none is needed, and .npmrc lets none run. */
const WOULD_RUN = ['node_modules/@prisma/engines', 'node_modules/esbuild', 'node_modules/prisma']

/** A package without an address is asked of the registry; one of git or of a web site has to have one. */
const REGISTRY = 'https://registry.npmjs.org/'

/** The rows of the table of packages in DEVELOPERS.md. */
function tableRows() {
  const text = readFileSync('DEVELOPERS.md', 'utf8')
  const table = text.slice(text.indexOf('| Package | Why |')).split('\n\n')[0] ?? ''
  return table
    .split('\n')
    .slice(2)
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .map(([, name = '', why = '', licence = '', packages = '']) => ({ name, why, licence, packages }))
}

describe('what it stands on', () => {
  it('is named in DEVELOPERS.md package by package, with reason, licence and how many packages each brings', () => {
    const rows = tableRows()
    expect(rows.map(({ name }) => name).sort()).toEqual(Object.keys(direct).sort())
    for (const { name, why, licence, packages } of rows) {
      const said = JSON.parse(readFileSync(`node_modules/${name}/package.json`, 'utf8')).license
      expect([name, why.length > 4, licence, packages]).toEqual([
        name,
        true,
        said.replace(/^\((.*)\)$/, '$1'),
        String(broughtBy(name).size),
      ])
    }
  })
  it('is under licences that were looked at, every package of the lock file', () => {
    expect(Object.keys(lock.packages).length).toBeGreaterThan(300)
    expect(refusedLicences()).toEqual([])
    expect(refusedLicences([{ name: 'a', place: 'node_modules/a', licence: '' }])).toEqual([
      'node_modules/a: no licence said',
    ])
    expect(
      ['GPL-3.0', 'LGPL-3.0-or-later', 'EPL-2.0', 'MIT AND AGPL-3.0', 'none'].filter((one) => isAllowed('a', one)),
    ).toEqual([])
    expect(isAllowed('node-forge', '(BSD-3-Clause OR GPL-2.0)')).toBe(true)
  })
  it('has its notices served at /licences.txt as they are now (npm run licences writes them)', () => {
    const written = readFileSync('public/licences.txt', 'utf8')
    expect(written === notices()).toBe(true)
    for (const font of ['vollkorn', 'sofia-sans-condensed'])
      expect(written).toContain(`@fontsource/${font} 5.3.0: OFL-1.1`)
    const unsaid = lockedPackages().filter(({ dev, name }) => !dev && !written.includes(`${name} `))
    expect(unsaid).toEqual([])
  })
  it('is pinned, comes from the registry alone with its sum, and runs no program when it is installed', () => {
    expect(lock.lockfileVersion).toBe(3)
    expect(Object.entries(direct).filter(([, version]) => !/^\d+\.\d+\.\d+[\w.-]*$/.test(version))).toEqual([])
    // What is in its parent's own parcel has the parent's sum.
    const all = Object.entries(lock.packages).filter(([place, one]) => place !== '' && !one.inBundle)
    const strange = all.filter(
      ([, { resolved = REGISTRY, integrity = '' }]) =>
        !resolved.startsWith(REGISTRY) || !integrity.startsWith('sha512-'),
    )
    expect(strange.map(([place]) => place)).toEqual([])
    expect(all.filter(([, one]) => one.hasInstallScript).map(([place]) => place)).toEqual(WOULD_RUN)
    expect(readFileSync('.npmrc', 'utf8')).toMatch(/^ignore-scripts=true$/m)
    expect(ours.allowScripts).toBeUndefined()
    expect(ours.engines.node).toBe('>=20.19')
    expect(existsSync('npm-shrinkwrap.json')).toBe(false)
  })
})
