import { describeApi } from '../describe-api'

export const dynamic = 'force-static'

export const GET = () => Response.json(describeApi())
