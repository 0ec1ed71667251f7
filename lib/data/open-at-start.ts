import 'server-only'
import { database } from './client'
import { aheadNote, watchClock } from './clock-watch'
import { takeGiven } from './door/owner'
import { endOwnerSessions } from './door/sessions'
import { crewMode, givenPassphrase } from './env'
import { forgetDaily } from './forget-old'
import { unfinishedErasures } from './person/erasing'
import { plantDemo } from './plant-demo'

/** Opens the database and puts the demo shoots in an empty one; a fault is one line and the end of the process. */
export async function openAtStart(): Promise<void> {
  try {
    const { notes, server } = await database()
    for (const note of notes) console.log(note)
    for (const { shoot } of await unfinishedErasures())
      console.log(
        `Erasing a person from shoot ${shoot} was cut off. ${server ? 'Run' : 'Stop Emberslate and run'} npm run person -- erase again.`,
      )
    const ahead = await aheadNote()
    if (ahead) console.log(ahead)
    watchClock()
    forgetDaily()
    await plantDemo()
    if (crewMode() && (await takeGiven(givenPassphrase()))) await endOwnerSessions()
  } catch (fault) {
    console.error(fault instanceof Error ? fault.message.split('\n')[0] : String(fault))
    process.exit(1)
  }
}
