/** Something that wants to stand at a height, and needs room there. */
export interface Wish {
  /** The height its middle wants. */
  readonly at: number
  readonly height: number
}

interface Block {
  readonly members: readonly Wish[]
  readonly height: number
  readonly top: number
}

/**
 * The top of each item, in the given order and without overlap: those that would touch form a block, which is centred
 * on the heights its members want, and stays inside `top` to `bottom` as far as it fits.
 */
export function stackInBlocks(items: readonly Wish[], top: number, bottom: number): number[] {
  const blocks: Block[] = []
  for (const item of items) {
    let block = blockOf([item], top, bottom)
    for (let above = blocks.at(-1); above && above.top + above.height > block.top; above = blocks.at(-1)) {
      blocks.pop()
      block = blockOf([...above.members, ...block.members], top, bottom)
    }
    blocks.push(block)
  }
  return blocks.flatMap((block) => {
    let y = block.top
    return block.members.map((member) => {
      const own = y
      y += member.height
      return own
    })
  })
}

function blockOf(members: readonly Wish[], top: number, bottom: number): Block {
  const height = members.reduce((sum, member) => sum + member.height, 0)
  let above = 0
  const tops = members.map((member) => {
    const wish = member.at - member.height / 2 - above
    above += member.height
    return wish
  })
  const centred = tops.reduce((sum, wish) => sum + wish, 0) / members.length
  return { members, height, top: Math.max(top, Math.min(centred, bottom - height)) }
}
