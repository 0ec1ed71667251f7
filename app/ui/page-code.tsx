import { qrOf } from '@/lib/export/qr'
import { codeThatLeads } from '../words/shared'

/** A code that leads to an address: dark on white whatever the page, for cameras read nothing else; on paper 22 mm of code. */
export function PageCode({ at, leadsTo }: { at: string; leadsTo: string }) {
  const { size, modules, path } = qrOf(at)
  const side = `${(22 * size) / modules}mm`
  return (
    <figure className="m-0 break-inside-avoid">
      <svg
        role="img"
        aria-label={codeThatLeads(leadsTo)}
        viewBox={`0 0 ${size} ${size}`}
        shapeRendering="crispEdges"
        style={{ width: side, height: side }}
        className="block bg-white"
      >
        <path d={path} fill="#000" />
      </svg>
      <figcaption className="small break-all">{at}</figcaption>
    </figure>
  )
}
