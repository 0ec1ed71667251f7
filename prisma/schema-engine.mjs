#!/usr/bin/env node
/**
 * Stands in for the native schema engine that Prisma's command line would download: speaks its JSON-RPC over
 * standard input and output, and answers with the official WASM build over an embedded database in memory.
 * For contributors who change the schema (`npx prisma migrate diff`, see DEVELOPERS.md); the app itself migrates in process.
 */
import { readFileSync } from 'node:fs'
import { createInterface } from 'node:readline'
import { PGlite } from '@electric-sql/pglite'
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils'
import { PrismaPGlite } from 'pglite-prisma-adapter'
import { loadSchemaEngine } from './load-schema-engine.mjs'

const send = (message) => process.stdout.write(`${JSON.stringify(message)}\n`)

const datamodels = process.argv.flatMap((word, i) => {
  const file = process.argv[i + 1]
  return word === '--datamodels' && file ? [[file, readFileSync(file, 'utf8')]] : []
})

async function open() {
  const SchemaEngine = await loadSchemaEngine()
  const factory = bindMigrationAwareSqlAdapterFactory(new PrismaPGlite(new PGlite()))
  return SchemaEngine.new({ datamodels: datamodels.length ? datamodels : undefined }, () => {}, factory)
}

const failure = (error) => ({
  code: 4466,
  message: 'error',
  data: { is_panic: false, message: error?.message ?? String(error), error_code: error?.code ?? null, meta: null },
})

let engine
async function answer(line) {
  const { id, method, params } = JSON.parse(line)
  if (!method) return // the reply to our own "print"
  try {
    engine ??= await open()
    const result = await engine[method](params)
    if (method === 'diff' && result?.stdout != null)
      send({ id: 1e6, jsonrpc: '2.0', method: 'print', params: { content: result.stdout.replace(/\n$/, '') } })
    send({ id, jsonrpc: '2.0', result: result ?? {} })
  } catch (error) {
    send({ id, jsonrpc: '2.0', error: failure(error) })
  }
}

let chain = Promise.resolve()
createInterface({ input: process.stdin })
  .on('line', (line) => {
    chain = chain.then(() => answer(line))
  })
  .on('close', () => chain.then(() => process.exit(0)))
