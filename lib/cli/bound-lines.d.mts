import type { Server } from 'node:net'

export function boundLines(server: Server, most?: number, tell?: (words: string) => void): void
