interface Schema {
  readonly $ref?: string
  readonly type?: string
  readonly enum?: readonly unknown[]
  readonly const?: unknown
  readonly maxLength?: number
  readonly pattern?: string
  readonly properties?: Readonly<Record<string, Schema>>
  readonly items?: Schema
  readonly prefixItems?: readonly Schema[]
  readonly anyOf?: readonly Schema[]
  readonly oneOf?: readonly Schema[]
  readonly allOf?: readonly Schema[]
}
/** Begins with a digit: a quantity or a time, which tells of nobody. */
const FIGURES = /^\^(\\s\*\[-|\(\[01\]|\\d)/

// Every path of a JSON Schema at which a text of somebody's own stands ("people/*/name"), with how long it may be.
export function textPaths(schema: object): ReadonlyMap<string, number> {
  const found = new Map<string, number>()
  const visit = (one: Schema, path: string) => {
    for (const part of [...(one.anyOf ?? []), ...(one.oneOf ?? []), ...(one.allOf ?? [])]) visit(part, path)
    for (const [key, inner] of Object.entries(one.properties ?? {})) visit(inner, path ? `${path}/${key}` : key)
    for (const inner of [...(one.items ? [one.items] : []), ...(one.prefixItems ?? [])]) visit(inner, `${path}/*`)
    const isText = one.type === 'string' && one.enum === undefined && one.const === undefined
    if (isText && !FIGURES.test(one.pattern ?? ''))
      found.set(path, Math.max(found.get(path) ?? 0, one.maxLength ?? Infinity))
  }
  visit(schema as Schema, '')
  return found
}
