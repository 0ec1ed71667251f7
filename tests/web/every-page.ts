import { readdirSync } from 'node:fs'
import DEMO from '../../prisma/demo/leg-of-lamb.json' with { type: 'json' }

/** Every page of the app as its file has it: "/shoots/[shootId]/plan". */
export function pageFiles(folder = 'app', path = ''): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (entry.isDirectory()) return pageFiles(`${folder}/${entry.name}`, `${path}/${entry.name}`)
    return entry.name === 'page.tsx' ? [path || '/'] : []
  })
}

/** What stands for the parts of an address that a file leaves open. A page with another one needs its row here. */
const partsOf = (shoot: string): Readonly<Record<string, string>> => ({
  '[shootId]': shoot,
  '[cardId]': shoot,
  '[guide]': 'plan-a-cook',
})

/** The same as addresses, of the shoot that an app begins with. */
export async function everyPage(address: string): Promise<readonly string[]> {
  const { shoots } = (await (await fetch(`${address}/api/shoots`)).json()) as {
    shoots: { id: string; title: string }[]
  }
  const demo = shoots.find(({ title }) => title === DEMO.title) ?? shoots[0]
  const parts = partsOf(demo?.id ?? '')
  return pageFiles().map((file) =>
    file.replace(/\[\w+\]/g, (open) => {
      const stands = parts[open]
      if (stands === undefined)
        throw new Error(`${file}: what stands for ${open}? Write it into tests/web/every-page.ts.`)
      return stands
    }),
  )
}
