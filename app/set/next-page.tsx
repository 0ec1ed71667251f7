'use client'
import { type Duty, dutiesOf, isOver, meanwhile, nextDuty } from '@/lib/session/board-view'
import { countLead, doWords, NOT_TOLD, stateWords } from '@/lib/session/board-words'
import {
  about,
  allWhile,
  cameraWords,
  logAndReadingsGo,
  nothingMoreForYouToday,
  nowWords,
  thenNext,
  to,
  toWords,
} from '../words/set'
import { Answers } from './answers'
import { Count } from './count'
import { FoodLine } from './food-line'
import { useSet } from './set-context'
import type { SheetName } from './sheets'
import { WaitLine } from './wait-line'

interface NextPageProps {
  readonly open: (sheet: SheetName) => void
  /** It stands within another page, whose headings are above its own. */
  readonly within?: boolean
}
/** What is next, when, what must I do; and what a thumb does about it. */
export function NextPage({ open, within = false }: NextPageProps) {
  const Title = within ? 'h3' : 'h1'
  const { session, facts, me, now } = useSet()
  const duties = me === null ? [] : dutiesOf(session, facts, me)
  const next = nextDuty(duties, now)
  return (
    <section className="now" aria-label={within ? undefined : nowWords}>
      {next ? <Next duty={next} title={Title} /> : <Nothing title={Title} />}
      <FoodLine />
      <Then duties={duties.filter((duty) => duty !== next && !isOver(duty))} next={next} />
      <div className="foot">
        {next && <Answers duty={next} />}
        <div className="thumb three">
          <Action name="Reading" sheet="reading" open={open} />
          <Action name="Mark" sheet="mark" open={open} />
          <Action name="Take" sheet="take" open={open} />
          <Action name="Shot done" sheet="shot" open={open} />
          <Action name="Late" sheet="late" open={open} />
          <Action name="More" sheet="more" open={open} />
        </div>
      </div>
    </section>
  )
}

function Action({ name, sheet, open }: { name: string; sheet: SheetName; open: (sheet: SheetName) => void }) {
  return (
    <button type="button" onClick={() => open(sheet)}>
      {name}
    </button>
  )
}

type TitleTag = 'h1' | 'h3'
function Nothing({ title: Title }: { title: TitleTag }) {
  return (
    <>
      <Title className="next">{nothingMoreForYouToday}</Title>
      <p className="do">{logAndReadingsGo}</p>
    </>
  )
}

function Next({ duty, title: Title }: { duty: Duty; title: TitleTag }) {
  const { now, units, clock } = useSet()
  return (
    <>
      <Title className={`next ${duty.title.length > 22 ? 'long' : ''}`}>{duty.title}</Title>
      <p className="lb">
        <StateMark state={duty.state} /> {countLead(duty, now)}
      </p>
      {duty.until && <Count at={duty.until.at} now={now} />}
      {duty.moment && <Expected duty={duty} />}
      {/* Who stands by has the count, and needs the room for answers. */}
      {duty.moment && duty.state === 'ahead' && (
        <WaitLine now={now} standby={duty.standby} window={duty.moment.window} clock={clock} />
      )}
      <p className="do">{doWords(duty, units)}</p>
    </>
  )
}

function Expected({ duty: { moment } }: { duty: Duty }) {
  const { clock } = useSet()
  const { early, likely, late } = moment?.window ?? {}
  if (!moment || !likely) return null
  return (
    <p className="at">
      {about(shortName(moment.name), clock(likely))}{' '}
      {early && late && clock(early) !== clock(late) && <span>{to(clock(early), clock(late))}</span>}
    </p>
  )
}

/** The line is short. */
const shortName = (name: string) => name.replace(' temperature', '')

/** The state in a word, framed by its form: open ahead, filled when somebody must act, struck when it is lost. */
export function StateMark({ state, lapsed = false }: { state: Duty['state']; lapsed?: boolean }) {
  if (lapsed) return <b className="state is-ahead">{NOT_TOLD}</b>
  return <b className={`state is-${state}`}>{stateWords(state)}</b>
}

const SHOWN = 2
function Then({ duties, next }: { duties: readonly Duty[]; next: Duty | null }) {
  const { clock, now } = useSet()
  const coming = duties.filter((duty) => duty.state === 'ahead' && duty.sort >= now && duty !== next).slice(0, SHOWN)
  const going = meanwhile(duties)
  if (coming.length + going.length === 0) return null
  return (
    <ul className="then" aria-label={thenNext}>
      {coming.map((duty) => (
        <li key={duty.id}>
          <span className="time">{clock(duty.sort)}</span>
          <span>{duty.title}</span>
          <span className="win">{duty.camera ? cameraWords(duty.camera) : (duty.place ?? '')}</span>
        </li>
      ))}
      {going.map((duty) => (
        <li key={duty.id}>
          <span className="time">
            {toWords} {duty.until && clock(duty.until.at)}
          </span>
          <span>{duty.title}</span>
          <span className="win">{allWhile}</span>
        </li>
      ))}
    </ul>
  )
}
