import Link from 'next/link'
import type { PlayedPicture } from '@/lib/session/played-picture'
import * as words from '../words/start'
import played from './generated/played-day.json'
import { PlayedDay } from './played-day'

/** JSON knows no fixed-length lists and no branded numbers; the program that wrote the file wrote this. */
const DAY = played as unknown as PlayedPicture

/** The demo's day, played: at once for who comes new, on a press for who has shoots of their own. */
export function DemoDay({ demoId, playsAtOnce }: { demoId: string | null; playsAtOnce: boolean }) {
  return (
    <section aria-label={words.howItGoes} className={playsAtOnce ? 'mt-6' : 'mt-16'}>
      {!playsAtOnce && <h2 className="mb-4">{words.howItGoes}</h2>}
      <PlayedDay day={DAY} playsAtOnce={playsAtOnce} />
      <p className="small mt-2">
        {words.rehearsalOf(DAY.title)}{' '}
        {demoId && (
          <Link className="textlink" href={`/shoots/${demoId}/set/rehearsal`} prefetch={false}>
            {words.tryIt}
          </Link>
        )}
      </p>
    </section>
  )
}
