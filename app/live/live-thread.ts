import { answers } from '../answers'
import { answerTo } from './live-answer'

/** The thread beside the server that re-forecasts days under way, apart from the one that lays days out for seconds. */
answers(answerTo)
