/** What the server says of itself: one JSON line each, with the number of its request. Plain Node, because the start command says things too. */
import { AsyncLocalStorage } from 'node:async_hooks'
import path from 'node:path'

/** Next loads files once per bundle; the request is one for the process. */
const shared = globalThis
shared.emberslateRequest ??= new AsyncLocalStorage()

const FRAMES = 8
const LONGEST = 200

/** Runs `work` so that all it says carries the number of this request. */
export const inRequest = (request, work) => shared.emberslateRequest.run(request, work)
/** The request at work: its number, and what the door notes of it. Nothing outside a request. */
export const requestNow = () => shared.emberslateRequest.getStore()

/** What a sentence of a fault begins with; any other word with a capital may be a name. */
const BEGINS =
  /^(A|An|Assignment|Cannot|Class|Error|Expected|Failed|Invalid|Maximum|Missing|No|Not|Nothing|Reduce|The|There|This|Unable|Unexpected|Unique|E[A-Z\d]+:?)$/

/**
 * Words without what they are about: what stands in quotes, addresses, the numbers of people, and values of a row go.
 * PostgreSQL writes "Key (name)=(Anna)", an address has a password in it, and a sentence of ours quotes what was typed.
 */
export function scrubbed(words) {
  return words
    .split('\n', 1)[0]
    .slice(0, 4 * LONGEST)
    .replace(/\b[a-z][a-z+.-]*:\/\/\S+/gi, '…')
    .replace(/"[^"]*"?|`[^`]*`?|“[^”]*”?|‘[^’]*’?|(?<![\p{L}\d])'[^']*'?/gu, '…')
    .replace(/[({[][^)}\]]*[)}\]]?/g, '…')
    .replace(/\S+@\S+/g, '…')
    .replace(/[+\d][\d\s/().-]{5,}\d/g, '…')
    .replace(/=\s*\S+/g, '=…')
    .replace(/(?<!\S)\p{Lu}\S*/gu, (word) => (BEGINS.test(word) ? word : '…'))
    .replace(/[^\s…]{40,}/g, '…')
    .slice(0, LONGEST)
}

/** A place in a file, as V8 writes it; a line of a message that only looks like one has no line and column. */
const FRAME = /^\s+at (.{1,300}:\d+:\d+\)?)$/
/** Where it happened, without the folder that everything stands in. */
function framesOf({ stack, message }) {
  const lines = String(stack ?? '')
    .replace(String(message), '')
    .split('\n')
  const frames = lines.flatMap((line) => FRAME.exec(line)?.[1] ?? []).slice(0, FRAMES)
  return frames.map((frame) => frame.replaceAll('file://', '').replaceAll(process.cwd() + path.sep, ''))
}

const isCode = (code) => typeof code === 'string' && /^[A-Z0-9_]{2,40}$/.test(code)
/** A database's words quote what it was given, and so do those of a parser: their code and place must do. */
const quotes = (fault) =>
  fault instanceof SyntaxError || /^(?=.*\d)[0-9A-Z]{5}$/.test(fault.code) || /^(Prisma|DriverAdapter)/.test(fault.name)

/** What may be said of a fault: its kind, code and place, and its words without what they are about. */
export function faultFacts(fault) {
  if (!(fault instanceof Error)) return { fault: typeof fault }
  const facts = { fault: /^\w{1,60}$/.test(fault.name) ? fault.name : 'Error' }
  if (isCode(fault.code)) facts.code = fault.code
  if (!quotes(fault)) facts.words = scrubbed(fault.message)
  const cause = fault.cause instanceof Error ? faultFacts(fault.cause) : undefined
  return { ...facts, frames: framesOf(fault), ...(cause && { cause }) }
}

const LEVELS = ['info', 'warn', 'error']

/** One line: when, how grave, what, by which request, and the facts. */
export function lineOf(level, event, facts = {}, now = Date.now()) {
  if (!LEVELS.includes(level)) throw new RangeError(`level ${level}: say one of ${LEVELS.join(', ')}`)
  const request = requestNow()?.id
  return JSON.stringify({ time: new Date(now).toISOString(), level, event, ...(request && { request }), ...facts })
}

/** What is no trouble goes to standard output, the rest to standard error. */
export function say(level, event, facts) {
  const stream = level === 'info' ? process.stdout : process.stderr
  stream.write(`${lineOf(level, event, facts)}\n`)
}

export const sayFault = (event, fault, facts) => say('error', event, { ...facts, ...faultFacts(fault) })
