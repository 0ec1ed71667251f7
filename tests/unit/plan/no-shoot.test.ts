import { describe, expect, test } from 'vitest'
import { parseShootText } from '../../../lib/plan/parse'
import { faults, lambWith } from './shoots'

describe('parseShootText: files that are no shoot', () => {
  const told = (text: string) => {
    const result = parseShootText(text)
    return result.ok ? [] : result.problems.map(({ sentence }) => sentence)
  }
  test.each([
    ['', 'The file is not JSON: in line 1, column 1, the file ends. Expected is a shoot file, which begins with {.'],
    [
      '{"title": "Lamb",}',
      'The file is not JSON: in line 1, column 18, there is }. Expected is another key in quotation marks.',
    ],
    [
      '{\n  "title" "Lamb"\n}',
      'The file is not JSON: in line 2, column 11, there is ". Expected is a colon after the key.',
    ],
    ['{"a": 1 "b": 2}', 'The file is not JSON: in line 1, column 9, there is ". Expected is a comma or }.'],
    ["{'a': 1}", "The file is not JSON: in line 1, column 2, there is '. Expected is a key in quotation marks, or }."],
    ['[1, 2', 'The file is not JSON: in line 1, column 6, the file ends. Expected is a comma or ].'],
    [
      '{"a": "x\ny"}',
      'The file is not JSON: in line 1, column 9, there is a control character. Expected is the closing quotation mark.',
    ],
    ['{"a": 01}', 'The file is not JSON: in line 1, column 8, there is 1. Expected is a comma or }.'],
    [
      '{"a": 1, "a": 2}',
      'The file is not JSON: in line 1, column 10, there is ". Expected is another key: "a" stands here a second time.',
    ],
    ['{} x', 'The file is not JSON: in line 1, column 4, there is x. Expected is the end of the file.'],
  ])('%j', (text, sentence) => expect(told(text)).toEqual([sentence]))

  test('5 MB are refused by their size before they are read', () =>
    expect(told(`{"title": "${'x'.repeat(5_000_000)}"`)).toEqual([
      'The file holds 5.0 MB; a shoot file is 1 MB at most. Choose the JSON file that was exported here.',
    ]))

  test('keys that would poison an object are refused by name', () => {
    const result = parseShootText('{"__proto__": {"ok": true}, "place": {"constructor": 1}}')
    expect(result.ok || result.problems.map(({ pointer }) => pointer)).toEqual(['/__proto__'])
  })

  test('nesting and lists without end', () => {
    expect(told('['.repeat(5000))[0]).toMatch(/nesting of at most 200/)
    expect(told(`${'[['.repeat(20)}${']]'.repeat(20)}`)[0]).toMatch(/nested more than 12 deep/)
    expect(
      faults(lambWith({ '/shots': Array.from({ length: 201 }, (_, i) => ({ id: `s${i}`, title: 'S', free: true })) })),
    ).toEqual(['/shots: There are too many shots; at most 200 fit into one shoot.'])
  })
})
