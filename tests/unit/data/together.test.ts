import { expect, it } from 'vitest'
import { Together } from '../../../lib/data/together'

it('those who ask at once share an answer; who asks later shares the next; a fault is of those who asked then', async () => {
  const answers: ((value: string | Error) => void)[] = []
  const together = new Together(
    () =>
      new Promise<string>((resolve, reject) => {
        answers.push((value) => (value instanceof Error ? reject(value) : resolve(value)))
      }),
  )
  const asked = async (count: number) => expect.poll(() => answers.length).toBe(count)
  const first = [together.ask(), together.ask()]
  await asked(1)
  // The first question is under way: what changes from here on it may not see.
  const second = [together.ask(), together.ask()]
  answers[0]?.('old')
  expect(await Promise.all(first)).toEqual(['old', 'old'])
  await asked(2)
  const third = together.ask()
  answers[1]?.(new Error('away'))
  expect(await Promise.allSettled(second)).toMatchObject([{ status: 'rejected' }, { status: 'rejected' }])
  await asked(3)
  answers[2]?.('new')
  expect(await third).toBe('new')
  expect(answers).toHaveLength(3)
})
