import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const root = fileURLToPath(new URL('..', import.meta.url))

export default defineConfig({
  root,
  resolve: {
    alias: { '@': root.replace(/\/$/, ''), 'server-only': path.join(root, 'node_modules/server-only/empty.js') },
  },
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
  },
})
