import { readFileSync } from 'node:fs'
import { afterEach, expect, it } from 'vitest'
import { postgresFindings } from '../../../lib/admin/doctor/postgres'
import { database } from '../../../lib/data/client'
import { createShoot } from '../../../lib/data/create-shoot'
import { closeAll, freshDatabase } from '../real-database'

afterEach(closeAll)

it('the doctor looks at version, tables, notices, connections and clock of a PostgreSQL', async () => {
  const url = await freshDatabase()
  await createShoot(JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8')), 'write-000001')
  const found = await postgresFindings(url)
  const abouts = ['PostgreSQL', 'Tables', 'Notices', 'Connections', 'Clock', 'Clock and log']
  expect(found.map(({ about }) => about)).toEqual(abouts)
  expect(found.filter(({ state, about }) => state !== 'ok' && about !== 'Connections')).toEqual([])
  const { prisma } = await database()
  await prisma.$executeRaw`DELETE FROM "_prisma_migrations" WHERE migration_name LIKE '%_server'`
  expect((await postgresFindings(url))[1]?.sentence).toBe('Changes that are due: 1.')
  await prisma.$executeRaw`UPDATE "_prisma_migrations" SET migration_name = '29990101000000_later'`
  expect((await postgresFindings(url))[1]?.state).toBe('broken')
  const other = new URL(url)
  other.pathname = '/not-there'
  expect((await postgresFindings(other.href))[0]?.sentence).toMatch(/there is no such database\.$/)
})
