/**
 * What a guide is made of. In its sentences [New shoot] is what can be pressed or filled in, by the name that stands on
 * the screen, and `npm start` is what is typed; a test holds both.
 */
export type GuideId = 'plan-a-cook' | 'run-a-day' | 'publish-a-card' | 'connect-a-logger' | 'go-to-a-server'

export interface Picture {
  /** The file under public/help, without its ending. */
  readonly name: string
  /** What is seen, for those who do not see it. */
  readonly alt: string
}
export interface Step {
  readonly says: string
  readonly picture?: Picture
  /** Where the hazard is. */
  readonly caution?: string
  /** Lines to type at the computer that Emberslate runs on. */
  readonly type?: readonly string[]
}
export interface Guide {
  readonly id: GuideId
  readonly title: string
  /** What stands there at the end. */
  readonly gives: string
  readonly steps: readonly Step[]
  /** What may go wrong, and what to do. */
  readonly wrong: readonly { readonly sign: string; readonly todo: string }[]
}
