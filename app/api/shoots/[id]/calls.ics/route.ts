import { BorderError } from '@/lib/data/border-error'
import { grantOfCalendar } from '@/lib/data/door/calendar-keys'
import { loadFormer } from '@/lib/data/folder/load-former'
import { loadShoot } from '@/lib/data/load-shoot'
import { calendarOf, type FormerEvent, formerNames } from '@/lib/export/calendar'
import { eventsOf } from '@/lib/export/calendar-events'
import { hasShape } from '@/lib/plan/document-shape'
import { parseShoot } from '@/lib/plan/parse'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import { instant, type UnitSystem } from '@/lib/units'
import { announced } from '../../../../announced'
import { chosenUnits } from '../../../../units'
import { layoutReady } from '../../../../workbench'
import { rememberedLayout } from '../../../../worked-out'
import { answer, valueOrRefuse } from '../../../border'

/** The calendar of the whole shoot; of one person by `?person=ID`, or by the key of a crew link, which opens no other. */
export const GET = (request: Request, { params }: { params: Promise<{ id: string }> }) =>
  answer(async () => {
    const { id } = await params
    const saved = await loadShoot(id)
    if (!saved) throw new BorderError('not-found')
    const shoot = valueOrRefuse(parseShoot(saved.document))
    const laid = await layoutReady(shoot)
    if (!laid.ok) throw new BorderError('invalid', { problems: laid.problems })
    const url = new URL(request.url)
    const person = personOf((await grantOfCalendar(url))?.person ?? url.searchParams.get('person'), shoot)
    const units = await chosenUnits()
    const { layout, changes, changed } = await announced(id, laid.layout, shoot.zone)
    const morning = eventsOf({ shoot, layout: laid.layout, units }, person)
    const text = calendarOf({
      shootId: id,
      sheet: { shoot, layout, units },
      // Readers take what has a higher number; both only ever grow.
      revision: saved.version + changes,
      saved: instant(Math.max(saved.savedAt, changed ?? 0)),
      person,
      former: [...morning, ...formerEvents(await loadFormer(id, saved.version), units, person)],
    })
    return new Response(text, {
      headers: {
        'content-type': 'text/calendar; charset=utf-8',
        'content-disposition': `inline; filename="calls${person ? `-${person}` : ''}.ics"`,
        'cache-control': 'no-store',
      },
    })
  })

function personOf(person: string | null, shoot: Shoot): string | undefined {
  if (person === null) return undefined
  if (shoot.people?.some(({ id }) => id === person)) return person
  const known = shoot.people?.map(({ id }) => id).join(', ')
  const sentence = `Nobody in this shoot has this id. ${known ? `Write one of ${known}.` : 'Add people to the shoot first.'}`
  throw new BorderError('not-found', { sentence })
}

/** So many versions back a layout may still be remembered. */
const REMEMBERED = 20

/** Entries of former versions: as they stood where the layout is remembered, else by name. */
function formerEvents(
  documents: readonly ShootDocument[],
  units: UnitSystem,
  person: string | undefined,
): FormerEvent[] {
  const placed = documents.slice(0, REMEMBERED).flatMap((document) => {
    const parsed = parseShoot(document)
    const layout = parsed.ok ? rememberedLayout(parsed.value) : undefined
    return parsed.ok && layout ? eventsOf({ shoot: parsed.value, layout, units }, person) : []
  })
  return [...placed, ...documents.filter(hasShape).flatMap((document) => formerNames(document, person))]
}
