/** `npm run doctor`: looks at everything that Emberslate stands on, and says what to do. It changes nothing. */
import { existsSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { askedPort, databaseUrl, dataFolder, givenNames } from '../data/env'
import { holderOf } from '../data/folder/lock'
import { certificateFinding } from './doctor/certificate'
import { clockAfter, clockOfFolder } from './doctor/clock'
import { embeddedFindings } from './doctor/embedded'
import { broken, type Finding, lineOf, look, ok, verdictOf } from './doctor/finding'
import { freeRoom, journalFindings, rightsFindings, roomFinding } from './doctor/folder'
import { buildFinding, freeMemory, memoryFinding, nodeFinding, partsFinding, zoneFinding } from './doctor/machine'
import { postgresFindings } from './doctor/postgres'
import { appAt, appFindings, holderFinding, portFindings } from './doctor/running'

const HELP = `npm run doctor looks at this computer, the ports, the data and the clock, and says what to do. It changes nothing.
Each line is ok, look (see to it) or broken. It ends with 0, 1 or 2: all well, something to look at, something broken.
PORT, EMBERSLATE_DATA and DATABASE_URL mean what they mean to npm start.`

/** What cannot be looked at is told as a finding too: one trouble must not hide the next. */
async function tried(
  about: string,
  work: () => Promise<readonly Finding[]> | readonly Finding[],
): Promise<readonly Finding[]> {
  try {
    return await work()
  } catch (fault) {
    const said = fault instanceof Error ? (fault.message.split('\n')[0] as string) : String(fault)
    return [broken(about, said, 'See to this first, then ask again.')]
  }
}

const machine = () => [
  nodeFinding(process.versions.node),
  memoryFinding(freeMemory()),
  zoneFinding(Intl.DateTimeFormat().resolvedOptions().timeZone),
  partsFinding(),
  buildFinding(),
]

async function folderFindings(folder: string, port: number): Promise<readonly Finding[]> {
  const app = await appAt(port)
  const ports = await portFindings(port, app !== undefined)
  if (!existsSync(folder)) {
    const above = path.dirname(folder)
    const made = ok('Data folder', `${folder} is not there yet: the first npm start makes it.`)
    return [
      ...ports,
      existsSync(above)
        ? made
        : broken('Data folder', `${above} is not there.`, 'Make it, or correct EMBERSLATE_DATA.'),
    ]
  }
  const holder = await holderOf(folder)
  const journaled = await journalFindings(folder).catch((fault: Error) => fault)
  const journals =
    journaled instanceof Error ? [broken('Journals', journaled.message, 'Then ask again.')] : journaled.findings
  const database = () => {
    if (app && holder !== undefined) return appFindings(app)
    if (holder !== undefined)
      return [
        look('Database', 'It is open elsewhere, so it was not opened here.', 'Ask again while Emberslate is stopped.'),
      ]
    return journaled instanceof Error ? [] : embeddedFindings(folder, journaled)
  }
  return [
    ...ports,
    ...(await tried('Data folder', () => rightsFindings(folder))),
    ...(await tried('Room', async () => [roomFinding(await freeRoom(folder))])),
    holderFinding(holder, port, app !== undefined),
    ...journals,
    ...(await tried('Database', async () => database())),
    clockOfFolder(folder),
    ...(journaled instanceof Error ? [] : [clockAfter(journaled.lastReceived)]),
    certificateFinding(folder, givenNames()),
  ]
}

async function serverFindings(url: string, port: number): Promise<readonly Finding[]> {
  const app = await appAt(port)
  return [
    ...(await portFindings(port, app !== undefined)),
    ...(await tried('PostgreSQL', () => postgresFindings(url))),
    ...(app ? appFindings(app) : []),
  ]
}

/** Every finding, in the order in which a person would go through them. */
export async function examine(): Promise<readonly Finding[]> {
  const port = askedPort()
  const kept = () => {
    const url = databaseUrl()
    return url === null ? folderFindings(dataFolder(), port) : serverFindings(url, port)
  }
  return [...(await tried('Machine', machine)), ...(await tried('Data', kept))]
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (process.argv.includes('--help')) console.log(HELP)
  else {
    const findings = await examine()
    for (const finding of findings) console.log(lineOf(finding))
    const { words, code } = verdictOf(findings)
    console.log(`\n${words}`)
    process.exitCode = code
  }
}
