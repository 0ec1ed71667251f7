import 'server-only'

/** One for the process, whichever of Next's bundles a thread is started in. */
const shared = globalThis as { emberslateBrokenThreads?: Set<string> }
shared.emberslateBrokenThreads ??= new Set()
const broken = shared.emberslateBrokenThreads

/** A thread that never answered: the server does its work, and is slower for it. */
export const noteBroken = (name: string) => broken.add(name)
export const brokenThreads = (): readonly string[] => [...broken]
