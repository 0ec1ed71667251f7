import { parentPort } from 'node:worker_threads'
import { type Asked, answerTo } from './live-answer'

/** The thread beside the server that re-forecasts days under way, apart from the one that lays days out for seconds. */
parentPort?.on('message', (asked: Asked) => parentPort?.postMessage(answerTo(asked)))
