import { demoIds } from '../../data/plant-demo'
import type { Sql } from '../../data/server/server-sql'

interface Holds {
  readonly shoots: number
  readonly files: number
}
/** Nobody adds to them until the move is through; reading goes on. */
const LOCK =
  'LOCK TABLE "Shoot", "ShootVersion", "LogLine", "SmallFile", "FileLine", "Blob" IN SHARE ROW EXCLUSIVE MODE'
/** A demo shoot that nobody has touched does not count: a first start of the app plants them. */
const HOLDS = `SELECT
  (SELECT count(*) FROM "Shoot" WHERE "version" > 1 OR NOT "id" = ANY($1::text[])
    OR EXISTS (SELECT FROM "LogLine" WHERE "shootId" = "Shoot"."id"))::int AS "shoots",
  ((SELECT count(*) FROM "SmallFile" WHERE "revision" > 0) + (SELECT count(*) FROM "Blob")
    + (SELECT count(DISTINCT "file") FROM "FileLine"))::int AS "files"`

/** Leaves a server empty that holds nothing of anybody's; of another it says what there is, and what to do. */
export async function makeEmpty(sql: Sql, place: string): Promise<void> {
  await sql(LOCK)
  const demos = await demoIds()
  const [holds] = await sql<Holds>(HOLDS, [demos])
  if (!holds || holds.shoots > 0 || holds.files > 0) throw new Error(refusal(place, holds))
  await sql('DELETE FROM "Shoot" WHERE "id" = ANY($1::text[])', [demos])
}

function refusal(place: string, holds: Holds | undefined): string {
  const { shoots = 0, files = 0 } = holds ?? {}
  const what = [counted(shoots, 'shoot'), counted(files, 'kept file')].filter((words) => words !== '').join(' and ')
  return `${place} is not empty: it holds ${what}. Make a new one (createdb NAME) and move there, or take single shoots in by their archives.`
}
export const counted = (n: number, what: string) =>
  n === 0 ? '' : `${n.toLocaleString('en-GB')} ${what}${n === 1 ? '' : 's'}`
