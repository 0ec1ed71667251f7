export { ReadOnly as default } from '../read-only'
