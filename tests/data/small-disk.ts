import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

/** A disk that can be filled, emptied and made read-only. */
export interface SmallDisk {
  readonly folder: string
  fill(): void
  empty(): void
  readOnly(is: boolean): unknown
  remove(): void
}
const run = (command: string, ...args: string[]) => execFileSync(command, args, { stdio: 'pipe' })

/** Where root may mount, a disk in memory of so many MB; elsewhere the process is forbidden to let a file grow. */
export function smallDisk(mb: number): SmallDisk {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-disk-'))
  try {
    run('mount', '-t', 'tmpfs', '-o', `size=${mb}m`, 'tmpfs', folder)
  } catch {
    return limited(folder)
  }
  const filler = path.join(folder, 'filler')
  return {
    folder: path.join(folder, 'data'),
    fill: () => {
      const { bavail, bsize } = statfsSync(folder)
      writeFileSync(filler, Buffer.alloc(bavail * bsize))
    },
    empty: () => rmSync(filler),
    // A disk in use cannot be made so; what is opened anew through a second mount of it is as if it were.
    readOnly: (is) => {
      if (!is) return run('umount', folder)
      run('mount', '--bind', folder, folder)
      run('mount', '-o', 'remount,bind,ro', folder)
    },
    remove: () => {
      run('umount', '--recursive', '--lazy', folder)
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

function limited(folder: string): SmallDisk {
  const limit = (bytes: string) => run('prlimit', `--pid=${process.pid}`, `--fsize=${bytes}:`)
  return {
    folder: path.join(folder, 'data'),
    fill: () => limit('0'),
    empty: () => limit('unlimited'),
    readOnly: (is) => run('chmod', '-R', is ? 'a-w' : 'u+w', folder),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}
