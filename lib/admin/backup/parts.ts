import { z } from 'zod'

export const HEAD_NAME = 'emberslate-backup.json'
/** What a backup says of itself, as its first part. */
export const HEAD = z.object({ emberslateBackup: z.literal(1), made: z.string() })

/** In this order: what a line names is copied after the line, and the shoot that all of it belongs to comes last. */
export const FOLDERS = ['log', 'forecasts', 'photos', 'cookers', 'journal', 'door'] as const

const NAME = '[A-Za-z0-9_-][A-Za-z0-9._-]{0,150}'
const PLACE = new RegExp(`^(?:(?:log|forecasts|cookers|journal|door)|photos/${NAME})/${NAME}$`)
/** Whether a backup may have such a part: no way leads out of the folder. */
export const isPart = (name: string) => name === HEAD_NAME || PLACE.test(name)
