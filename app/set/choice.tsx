'use client'

interface ChoiceProps<T extends string> {
  readonly name: string
  readonly value: T
  readonly options: readonly (readonly [T, string])[]
  readonly onChoose: (value: T) => void
}

/** One of a few, all in sight. */
export function Choice<T extends string>({ name, value, options, onChoose }: ChoiceProps<T>) {
  return (
    <fieldset className="choice">
      <legend>{name}</legend>
      <div>
        {options.map(([id, words]) => (
          <button key={id} type="button" aria-pressed={id === value} onClick={() => onChoose(id)}>
            {words}
          </button>
        ))}
      </div>
    </fieldset>
  )
}

/** A choice of cook, where there is more than one. */
export function CookChoice(props: { cooks: readonly { id: string }[]; value: string; onChoose: (id: string) => void }) {
  if (props.cooks.length < 2) return null
  return (
    <Choice
      name="Roast"
      value={props.value}
      options={props.cooks.map(({ id }) => [id, id] as const)}
      onChoose={props.onChoose}
    />
  )
}

const AGO = [0, 1, 2, 5, 10, 20] as const
/** Now, or some minutes ago. */
export function AgoChoice({ value, onChoose }: { value: number; onChoose: (min: number) => void }) {
  return (
    <Choice
      name="When"
      value={String(value)}
      options={AGO.map((min) => [String(min), min === 0 ? 'now' : `${min} min ago`] as const)}
      onChoose={(min) => onChoose(Number(min))}
    />
  )
}
