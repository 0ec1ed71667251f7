/** Words over lines of so many letters; a no-break space holds, and a word longer than a line stands alone on one. */
export function wrapWords(text: string, columns: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/[ \n\t]+/).filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && longer.length > columns) {
      lines.push(line)
      line = word
    } else line = longer
  }
  return line === '' ? lines : [...lines, line]
}
