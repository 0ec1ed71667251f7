import path from 'node:path'

/** Why a disk refused, and what whoever sits at the computer can do; a sentence each. */
const WORDS: Readonly<Record<string, readonly [string, string]>> = {
  ENOSPC: ['the disk is full', 'Free some room on it, then try again.'],
  EDQUOT: ['no more room is allowed to this user', 'Free some room, then try again.'],
  EFBIG: ['files may not grow further here', 'Raise the limit (ulimit -f), then try again.'],
  EROFS: ['the disk can only be read', 'Make it writable again, then try again.'],
  EACCES: ['this user may not write or read there', 'Give the folder back to whoever runs Emberslate, then try again.'],
  EPERM: ['this user may not write there', 'Give the folder back to whoever runs Emberslate, then try again.'],
  EIO: ['the disk does not answer as it should', 'Save the archives of your shoots, and look at the disk.'],
  EMFILE: ['too many files and lines are open', 'Try again in a moment.'],
  ENFILE: ['too many files are open on this computer', 'Try again in a moment.'],
}
const codeOf = (fault: unknown) => String((fault as NodeJS.ErrnoException | undefined)?.code)

/** "the disk is full": no path in it, for it is told to phones too. */
export function whyRefused(fault: unknown): string {
  const said = fault instanceof Error ? (fault.message.split('\n')[0] as string) : String(fault)
  return WORDS[codeOf(fault)]?.[0] ?? said.replace(/,? '[^']*'/g, '')
}
export const wayOnFrom = (fault: unknown) => WORDS[codeOf(fault)]?.[1] ?? 'Free some room, then try again.'

/** Whether the disk is at fault, and not what stands on it. */
export const isRefusal = (fault: unknown) => codeOf(fault) in WORDS

/** For whoever starts the app: which file it is. */
export function unreadable(file: string, fault: unknown): Error {
  const where = path.resolve(file)
  if (!isRefusal(fault)) return fault instanceof Error ? fault : new Error(String(fault))
  return new Error(
    `${where} cannot be read: ${whyRefused(fault)} (${codeOf(fault)}). Nothing was changed. ${wayOnFrom(fault).replace('try', 'start')}`,
  )
}
