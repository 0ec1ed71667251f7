import { BorderError } from '@/lib/data/border-error'
import { keepLesson } from '@/lib/data/cookers'
import { loadShoot } from '@/lib/data/load-shoot'
import { parseShoot } from '@/lib/plan/parse'
import { wrapModel } from '../../../../shoots/wrap-model'
import { wrapTold } from '../../../../shoots/wrap-told'
import { layoutReady } from '../../../../workbench'
import { answer, readBody, valueOrRefuse } from '../../../border'

export const dynamic = 'force-dynamic'

/** Keeps what a cook of this shoot's own day taught of its cooker, under the cooker's name. */
export const POST = (request: Request, { params }: RouteContext<'/api/shoots/[id]/cookers'>) =>
  answer(async () => {
    const { id } = await params
    const body = await readBody(request)
    const saved = await loadShoot(id)
    if (!saved) throw new BorderError('not-found')
    const shoot = valueOrRefuse(parseShoot(saved.document))
    const cook = shoot.cooks.find((one) => one.id === body.cook)
    if (!cook)
      return refuse('/cook', `No cook has this id. Write one of ${shoot.cooks.map((one) => one.id).join(', ')}.`)
    const name = nameIn(body.name)
    const lesson = await lessonOf(id, saved.version, shoot, cook.id)
    const cooker = await keepLesson(name, cook.cooker.kind, lesson, Date.now())
    return Response.json({ cooker, name })
  })

function refuse(pointer: string, sentence: string): never {
  throw new BorderError('door-invalid', { problems: [{ pointer, sentence }], sentence })
}
const LONGEST = 60
function nameIn(name: unknown): string {
  if (typeof name !== 'string' || name.trim() === '')
    return refuse('/name', 'The cooker has no name yet. Write what the crew calls it, such as "The garden kettle".')
  if (name.trim().length > LONGEST)
    return refuse('/name', `This name is too long. Write one of ${LONGEST} letters at most.`)
  return name.trim()
}

/** Worked out here from the log: what a sender says that it learnt does not count. */
async function lessonOf(id: string, version: number, shoot: Parameters<typeof layoutReady>[0], cook: string) {
  const laid = await layoutReady(shoot)
  const model = laid.ok ? await wrapModel({ id, version, shoot }, laid.layout, {}, 60, 'metric') : null
  const taught = model && (await wrapTold(model))[cook]?.taught
  return taught?.lesson ?? refuse('/cook', 'Nothing was learnt: no probe was read in the meat of this cook.')
}
