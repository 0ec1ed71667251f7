// Keeps the set board, its guide and the card of the shoots that were opened on this device for when there is no network:
// pages from the network first, the program's own files (whose names change with their content) from the cache first.
// Writes and everything under /api go straight to the network; what is logged is kept by the page itself.

const CACHE = 'emberslate-1'
const PAGE = /^\/($|help\/run-a-day$|cards\/[^/]+$|shoots\/[^/]+\/(set(\/|$)|card(\/sheet)?$))/
const FILE = /^\/(_next\/static\/|icons\/|help\/[\w-]+\.webp$|manifest\.webmanifest$)/
const IN_FILES = /\/(_next\/static\/|help\/[\w-]+\.webp)[^"'\\\s)]+/g
/** Not kept: without a network it is told why, and what to do. */
const OTHER_PAGE = /^\/(shoots|help|door|join|trust)(\/[^.]*)?$/
/** The mark of a part that broke while the page was sent; one that is drawn in the browser only is marked too. */
const BROKEN = /data-dgst="(?!BAILOUT)/
/** As a script names what it fetches later: the rest of the board, a worker. */
const IN_SCRIPTS = /static\/chunks\/[\w.~-]+\.js/g
const MOST_FILES = 400
/** A network that has not answered by then is as good as none. */
const PATIENCE_MS = 4000

self.addEventListener('install', () => self.skipWaiting())
self.addEventListener('activate', (event) => event.waitUntil(takeOver()))
self.addEventListener('message', (event) => {
  if (Array.isArray(event.data?.keep)) event.waitUntil(keepAll(event.data.keep))
})
self.addEventListener('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== self.location.origin) return
  if (FILE.test(pathname)) event.respondWith(fileOf(request))
  else if (request.mode !== 'navigate') return
  else if (PAGE.test(pathname)) event.respondWith(pageOf(event, request, pathname))
  else if (OTHER_PAGE.test(pathname)) event.respondWith(fetch(request).catch(noNetwork))
})
self.addEventListener('notificationclick', (event) => {
  event.notification.close()
  event.waitUntil(showBoard())
})

async function takeOver() {
  const old = (await caches.keys()).filter((name) => name !== CACHE)
  await Promise.all(old.map((name) => caches.delete(name)))
  await self.clients.claim()
}

/** A set screen that is open comes to the front. */
async function showBoard() {
  const open = await self.clients.matchAll({ type: 'window' })
  const board = open.find(({ url }) => PAGE.test(new URL(url).pathname))
  if (board) await board.focus()
}

async function fileOf(request) {
  const cache = await caches.open(CACHE)
  const kept = await cache.match(request, { ignoreVary: true })
  if (kept) return kept
  const response = await fetch(request)
  await keepFile(cache, request, response)
  return response
}

/** Only what never changes under its name: a server in development names files anew without saying so. */
async function keepFile(cache, request, response) {
  const { pathname } = new URL(request.url ?? request, self.location.origin)
  const lasts = /immutable/.test(response.headers.get('cache-control') ?? '') || !pathname.startsWith('/_next/')
  if (response.ok && lasts) await cache.put(request, response.clone())
}

async function pageOf(event, request, pathname) {
  const cache = await caches.open(CACHE)
  const kept = await cache.match(pathname, { ignoreVary: true })
  const asked = fetch(request).then(async (response) => {
    if (response.ok) event.waitUntil(keepPage(cache, pathname, response.clone()))
    return response.status >= 500 && kept ? kept : response
  })
  if (!kept) return asked.catch(noNetwork)
  // A page that comes late is kept too, though the kept one was shown.
  event.waitUntil(asked.catch(() => {}))
  const soon = new Promise((resolve) => setTimeout(() => resolve(kept), PATIENCE_MS))
  return Promise.race([asked.catch(() => kept), soon])
}

/** A page, every file it names, and what those fetch later. */
async function keepPage(cache, pathname, response) {
  if (!response.ok || response.redirected) return
  const text = await response.clone().text()
  if (BROKEN.test(text)) return
  await cache.put(pathname, response)
  const files = [...new Set(text.match(IN_FILES) ?? [])]
  await Promise.all(files.map((path) => keepPath(cache, path)))
  const later = await Promise.all(files.map((path) => laterOf(cache, path)))
  await Promise.all([...new Set(later.flat())].map((path) => keepPath(cache, path)))
  await prune(cache)
}

async function laterOf(cache, path) {
  const kept = path.endsWith('.js') ? await cache.match(path, { ignoreVary: true }) : null
  const named = (await kept?.text())?.match(IN_SCRIPTS) ?? []
  return named.map((file) => `/_next/${file}`)
}

async function keepPath(cache, path) {
  if (await cache.match(path, { ignoreVary: true })) return
  const response = await fetch(path).catch(() => null)
  if (response) await keepFile(cache, path, response)
}

async function keepAll(paths) {
  const cache = await caches.open(CACHE)
  for (const path of paths) {
    const { pathname } = new URL(path, self.location.origin)
    if (FILE.test(pathname)) await keepPath(cache, pathname)
    else if (PAGE.test(pathname)) {
      const response = await fetch(pathname).catch(() => null)
      if (response) await keepPage(cache, pathname, response)
    }
  }
}

/** Files of earlier versions of the program go, the oldest first. */
async function prune(cache) {
  const files = (await cache.keys()).filter(({ url }) => new URL(url).pathname.startsWith('/_next/'))
  await Promise.all(files.slice(0, Math.max(0, files.length - MOST_FILES)).map((file) => cache.delete(file)))
}

// The values of --paper and --ink, of the day and of the dusk.
const BODY =
  'margin:0 auto;max-width:40rem;padding:1rem 1.5rem;background:light-dark(#fbf8f1,#12100e);color:light-dark(#1d1814,#f6efe3);font:450 1.1875rem/1.45 Georgia,serif'
function noNetwork() {
  const words = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark"><title>No network · Emberslate</title><body style="${BODY}"><h1>This page needs the network.</h1><p>What was typed is kept in this browser, and saved once its page is open again.</p><p><a href="" style="color:inherit">Try again</a></p>`
  return new Response(words, { status: 503, headers: { 'content-type': 'text/html; charset=utf-8' } })
}
