/** One event of a stream of server-sent events; a comment has no name. */
export interface Heard {
  readonly event: string
  readonly data: string
  readonly id: string | null
}

/**
 * Takes a stream of server-sent events apart as it comes in (WHATWG HTML, 9.2.6 "Interpreting an event stream"). An
 * EventSource would hide the comments that are the server's heartbeat.
 */
export function eventReader(told: (heard: Heard) => void, comment: (text: string) => void): (chunk: string) => void {
  let rest = ''
  let [event, id, data]: [string, string | null, string[]] = ['message', null, []]
  const take = (line: string) => {
    if (line === '') {
      if (data.length > 0) told({ event, data: data.join('\n'), id })
      ;[event, id, data] = ['message', null, []]
      return
    }
    const colon = line.indexOf(':')
    const [field, value] = colon < 0 ? [line, ''] : [line.slice(0, colon), line.slice(colon + 1).replace(/^ /, '')]
    if (field === '') comment(value)
    else if (field === 'event') event = value
    else if (field === 'data') data.push(value)
    else if (field === 'id') id = value
  }
  return (chunk) => {
    const lines = (rest + chunk).split(/\r\n|\r|\n/)
    rest = lines.pop() ?? ''
    for (const line of lines) take(line)
  }
}
