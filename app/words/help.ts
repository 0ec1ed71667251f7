/** Texts of the help pages; the guides' own stand in guides/. */
import { connectALogger } from './guides/connect-a-logger'
import { goToAServer } from './guides/go-to-a-server'
import type { Guide } from './guides/guide'
import { planACook } from './guides/plan-a-cook'
import { publishACard } from './guides/publish-a-card'
import { runADay } from './guides/run-a-day'

export const GUIDES: readonly Guide[] = [planACook, runADay, publishACard, connectALogger, goToAServer]
export const guideCalled = (id: string): Guide | undefined => GUIDES.find((guide) => guide.id === id)

export const needsNone = 'Every page says what it needs. These are for reading beforehand, or when you are stuck.'
export const guidesWord = 'Guides'
export const otherGuides = 'Other guides'
export const youGet = 'What you have at the end'
export const stepsWord = 'Steps'
export const whatIfWrong = 'If it goes wrong'
export const glossaryWord = 'Words'
export const glossaryLead = 'What the words of the trade, of the physics and our own mean here.'
export const stepsIn = ({ steps }: Guide) => `${steps.length} steps`
