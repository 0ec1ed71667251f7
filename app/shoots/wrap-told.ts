import 'server-only'
import { MODEL_VERSION } from '@/lib/model/version'
import { whyBeside } from '../forecast-pool'
import type { WrapModel } from './wrap-model'
import type { WhyTold } from './wrap-why'

/** One for the process: page and routes of one day ask for it together. */
const holder = globalThis as { emberslateWhys?: Map<string, Promise<WhyTold>> }
holder.emberslateWhys ??= new Map()
const KEPT = 16

/** Why, and what was taught: worked out beside the server once, then remembered. */
export function wrapTold({ key, asked }: Pick<WrapModel, 'key' | 'asked'>): Promise<WhyTold> {
  const known = holder.emberslateWhys as Map<string, Promise<WhyTold>>
  const name = `${MODEL_VERSION} ${key}`
  const told = known.get(name) ?? whyBeside(asked)
  if (!known.has(name)) {
    known.set(name, told)
    told.catch(() => known.delete(name))
    if (known.size > KEPT) known.delete(known.keys().next().value as string)
  }
  return told
}
