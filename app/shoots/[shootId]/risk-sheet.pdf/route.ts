import { BorderError } from '@/lib/data/border-error'
import { announced } from '../../../announced'
import { answer } from '../../../api/border'
import { printedBeside } from '../../../print-pool'
import { chosenUnits } from '../../../units'
import { layoutReady, openShoot } from '../../../workbench'
import { paperOf, pdfResponse } from '../../pdf-response'
import { riskModel } from '../../prep-model'

export const GET = (request: Request, { params }: { params: Promise<{ shootId: string }> }) =>
  answer(async () => {
    const open = await openShoot((await params).shootId)
    const laid = await layoutReady(open.shoot)
    if (!laid.ok) throw new BorderError('invalid', { problems: laid.problems })
    const { layout } = await announced(open.id, laid.layout, open.shoot.zone)
    const model = riskModel(open, layout, await chosenUnits())
    const pdf = await printedBeside(open.shoot, { riskSheet: model, paper: paperOf(request) })
    return pdfResponse(pdf, `${open.shoot.title} risk sheet`)
  })
