import { describe, expect, it } from 'vitest'
import { describeApi } from '../../../app/api/describe-api'
import { isAddress, methodsAt, ROUTES } from '../../../lib/data/door/access'

type Content = Readonly<Record<string, { readonly schema?: object }>>
interface Operation {
  readonly summary?: string
  readonly parameters?: readonly { readonly name: string; readonly in: string; readonly schema?: object }[]
  readonly requestBody?: { readonly content: Content }
  readonly responses: Readonly<Record<string, { readonly content?: Content }>>
}
type Described = Readonly<Record<string, Operation>> & { readonly parameters?: Operation['parameters'] }

const api = describeApi()
const paths = api.paths as unknown as Readonly<Record<string, Described>>
const asDescribed = (path: string) => path.replaceAll('[', '{').replaceAll(']', '}')
/** Pages are for people; what programs ask for is described. */
const forPrograms = ROUTES.filter(({ path }) => /^\/api\/|\.\w+$|z$/.test(path))
const operations = Object.entries(paths).flatMap(([path, { parameters = [], ...methods }]) =>
  Object.entries(methods as Readonly<Record<string, Operation>>).map(([method, operation]) => ({
    name: `${method.toUpperCase()} ${path}`,
    path,
    operation,
    parameters: [...parameters, ...(operation.parameters ?? [])],
  })),
)

describe('the description of the API', () => {
  it('has every route that a program may ask for, and none that is not there', () => {
    const rows = forPrograms.map(({ method, path }) => `${method} ${asDescribed(path)}`)
    expect(operations.map(({ name }) => name).sort()).toEqual(rows.sort())
  })
  it('gives each parameter, body and answer a schema', () => {
    const loose = operations.flatMap(({ name, path, operation, parameters }) => {
      const open = [...path.matchAll(/\{(\w+)\}/g)].map(([, one]) => one)
      const inPath = parameters.filter((one) => one.in === 'path').map((one) => one.name)
      const contents = [operation.requestBody?.content, ...Object.values(operation.responses).map((one) => one.content)]
      const whole =
        contents.slice(1).every((one) => one !== undefined) &&
        contents.every((one) => Object.values(one ?? {}).every(({ schema }) => schema !== undefined)) &&
        parameters.every(({ schema }) => schema !== undefined) &&
        JSON.stringify(open) === JSON.stringify(inPath) &&
        Boolean(operation.summary)
      return whole ? [] : [name]
    })
    expect(loose).toEqual([])
  })
  it('refers to nothing that it does not hold', () => {
    const named = new Set([...JSON.stringify(api).matchAll(/"#\/components\/schemas\/(\w+)"/g)].map(([, name]) => name))
    expect([...named].filter((name) => !(String(name) in api.components.schemas))).toEqual([])
    expect(named.size).toBeGreaterThan(20)
  })
})

describe('an address', () => {
  it.each(['/api/shoots/%00', '/shoots/a%00b/plan', '/api/shoots/%zz', '/api/shoots/%ed%a0%80', '/%'])(
    '%s is none',
    (path) => expect(isAddress(path)).toBe(false),
  )
  it('takes the methods of the table and no other', () => {
    const taken = ['/api/shoots', '/api/shoots/x', '/api/shoots/x/links/y', '/api/none', '/api/shoots/x/y/z'].map(
      methodsAt,
    )
    expect(taken).toEqual([['GET', 'POST'], ['GET', 'PUT'], ['DELETE'], [], []])
  })
})
