/** Loaded into the server by a proof: on SIGUSR2 it collects what it can and writes its memory to a file. */
const { writeFileSync, renameSync } = require('node:fs')
const { isMainThread } = require('node:worker_threads')
const { setFlagsFromString } = require('node:v8')
const { runInNewContext } = require('node:vm')

const file = process.env.EMBERSLATE_MEMORY_FILE
if (isMainThread && file) {
  setFlagsFromString('--expose-gc')
  const collect = runInNewContext('gc')
  process.on('SIGUSR2', () => {
    for (let i = 0; i < 3; i++) collect()
    const { rss, heapUsed, external, arrayBuffers } = process.memoryUsage()
    writeFileSync(`${file}.part`, JSON.stringify({ rss, heapUsed, external, arrayBuffers }))
    renameSync(`${file}.part`, file)
  })
}
