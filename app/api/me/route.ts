import { roleOf } from '@/lib/data/door/access'
import { visitorOf } from '@/lib/data/door/visitor'
import { crewMode } from '@/lib/data/env'
import { answer } from '../border'

export const dynamic = 'force-dynamic'

/** Who asks, as the server knows them: in one shoot by `?shoot=ID`, else in the one whose link they opened last. */
export const GET = (request: Request) =>
  answer(async () => {
    const visitor = await visitorOf(request.headers)
    const shoot = new URL(request.url).searchParams.get('shoot') ?? visitor.grants.at(-1)?.shoot
    const grant = visitor.grants.find((one) => one.shoot === shoot)
    const person = grant && grant.person !== null ? { shoot: grant.shoot, id: grant.person } : null
    return Response.json(
      { role: roleOf(visitor, shoot), person, crewMode: crewMode() },
      { headers: { 'cache-control': 'no-store' } },
    )
  })
