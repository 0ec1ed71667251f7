import { readFileSync } from 'node:fs'
import asc from 'assemblyscript/asc'
import { PAGES } from '../model/simd/layout'

const ENTRY = 'lib/model/simd/assembly/index.ts'
export const BYTES_FILE = 'lib/model/simd/bytes.ts'

/** The kernel's bytes from its source, by the pinned assembler: the same source gives the same bytes. */
async function assemble(): Promise<Uint8Array> {
  const flags = [
    '-O3',
    '--converge',
    '--noAssert',
    '--enable',
    'simd',
    '--runtime',
    'stub',
    '--initialMemory',
    `${PAGES}`,
  ]
  const outputs = new Map<string, Uint8Array | string>()
  const { error, stderr } = await asc.main([ENTRY, ...flags, '--outFile', 'kernel.wasm'], {
    readFile: (name) => {
      try {
        return readFileSync(name, 'utf8')
      } catch {
        return null
      }
    },
    writeFile: (name, contents) => void outputs.set(name, contents),
    listFiles: () => [],
  })
  const bytes = outputs.get('kernel.wasm')
  if (error || !(bytes instanceof Uint8Array))
    throw new Error(`the kernel does not assemble: ${error?.message}\n${stderr}`)
  return bytes
}

const LINE = 108
/** The module that holds the bytes, so that no kernel is ever fetched or read from disk. */
export async function kernelModule(): Promise<string> {
  const text = Buffer.from(await assemble()).toString('base64')
  const lines = text.match(new RegExp(`.{1,${LINE}}`, 'g')) ?? []
  return [
    '/** The assembled kernel: `npm run kernel` writes this file, a test assembles it again and compares. */',
    'export const BYTES_BASE64 =',
    ...lines.map((line, i) => `  '${line}'${i < lines.length - 1 ? ' +' : ''}`),
    '',
  ].join('\n')
}
