import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import type { Guide, Step } from '../../words/guides/guide'
import { GUIDES, guideCalled, otherGuides, stepsWord, whatIfWrong, youGet } from '../../words/help'
import { GuideList } from '../guide-list'
import { GuidePicture } from '../guide-picture'
import { HelpHead } from '../help-head'
import { Said } from '../said'
import '../help.css'

interface Asked {
  readonly params: Promise<{ guide: string }>
}
export const generateMetadata = async ({ params }: Asked): Promise<Metadata> => ({
  title: guideCalled((await params).guide)?.title,
})

/** One guide: what it gives, the way there, and what to do when it goes wrong. */
export default async function GuidePage({ params }: Asked) {
  const guide = guideCalled((await params).guide)
  if (!guide) notFound()
  return (
    <main id="main" className="page">
      <HelpHead under />
      <h1>{guide.title}</h1>
      <p className="lead">
        <span className="sr-only">{youGet}: </span>
        {guide.gives}
      </p>
      <ol className="guide-steps" aria-label={stepsWord}>
        {guide.steps.map((step) => (
          <StepRow key={step.says} step={step} />
        ))}
      </ol>
      <Wrong wrong={guide.wrong} />
      <nav aria-labelledby="others" className="no-print mt-10">
        <h2 id="others">{otherGuides}</h2>
        <GuideList guides={GUIDES.filter((other) => other !== guide)} />
      </nav>
    </main>
  )
}

const StepRow = ({ step }: { step: Step }) => (
  <li>
    <div className="step-words">
      <p>
        <Said text={step.says} />
      </p>
      {step.type && (
        <pre>
          <code>{step.type.join('\n')}</code>
        </pre>
      )}
      {step.caution && (
        <p className="caution">
          <span>{step.caution}</span>
        </p>
      )}
    </div>
    {step.picture && <GuidePicture {...step.picture} />}
  </li>
)

const Wrong = ({ wrong }: { wrong: Guide['wrong'] }) => (
  <section aria-labelledby="wrong" className="mt-10">
    <h2 id="wrong">{whatIfWrong}</h2>
    <dl className="guide-wrong">
      {wrong.map(({ sign, todo }) => (
        <div key={sign}>
          <dt>{sign}</dt>
          <dd>
            <Said text={todo} />
          </dd>
        </div>
      ))}
    </dl>
  </section>
)
