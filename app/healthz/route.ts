export const dynamic = 'force-dynamic'

/** The process lives; whether it can work is asked at /readyz. */
export const GET = () => Response.json({ ok: true }, { headers: { 'cache-control': 'no-store' } })
