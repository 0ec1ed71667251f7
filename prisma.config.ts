import path from 'node:path'
import { defineConfig } from 'prisma/config'

// The CLI would download a native schema engine; ours is the official WASM build behind the same stdio protocol.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= path.resolve('prisma/schema-engine.mjs')
process.env.CHECKPOINT_DISABLE ??= '1'

export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
  datasource: { url: 'postgresql://unused/unused' },
})
