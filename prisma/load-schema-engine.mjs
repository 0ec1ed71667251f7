import { readFileSync } from 'node:fs'
import path from 'node:path'

let loaded // one WASM instance per process: the glue module keeps module-level views of its memory

/** The official WASM build of Prisma's schema engine, started. */
export function loadSchemaEngine() {
  loaded ??= load()
  return loaded
}

async function load() {
  const glue = await import('@prisma/schema-engine-wasm/schema_engine_bg')
  // No require.resolve: bundlers rewrite it.
  const file = path.join(
    /* turbopackIgnore: true */ process.cwd(),
    'node_modules/@prisma/schema-engine-wasm/schema_engine_bg.wasm',
  )
  const { instance } = await WebAssembly.instantiate(readFileSync(/* turbopackIgnore: true */ file), {
    './schema_engine_bg.js': glue,
  })
  glue.__wbg_set_wasm(instance.exports)
  instance.exports.__wbindgen_start()
  return glue.SchemaEngine
}
