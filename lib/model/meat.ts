/** One member's roast: temperatures, water and harm to germs at every node, advanced step by step. */
import { GAMMA, type Interior, interior, type Mesh, type SkinSide, stepInterior } from './conduction'
import { type Around, LATENT_JPKG, type SkinLaw, skinHeat } from './surface'
import { capacityLeft, conductionLeft, DRYABLE_SHARE, JUICE_TIME_S, letGoAt, yieldOf } from './yield'

/** Everything of a material that depends on temperature, 1 K apart, four columns side by side. */
export interface Matter {
  readonly fromC: number
  readonly rows: number
  /** k W/mK, ρc J/m³K, juice and fat let go in the end, log reduction per s. */
  readonly columns: Float64Array
  readonly rhoKgpM3: number
  /** Of what is let go, juice; the rest is fat. */
  readonly juiceShare: number
  /** Water that can dry out through the skin, and that can boil off, kg/m³. */
  readonly dryableKgpM3: number
  readonly boilableKgpM3: number
  /** All its water and fat, share of the raw mass: a roast dried right through has lost no more. */
  readonly losableFrac: number
}
export const MATTER_COLUMNS = 4
/** Over its own heat capacity, what holds a boiling node at the boiling point. */
export const HELD = 50

export interface MatterInput {
  readonly fromC: number
  readonly k_WpMK: Float64Array
  readonly rhoCp_JpM3K: Float64Array
  readonly rhoKgpM3: number
  readonly water: number
  readonly fat: number
  readonly boneShare: number
  readonly lethalityPerS: (tempC: number) => number
}
export function matterOf(input: MatterInput): Matter {
  const rows = input.k_WpMK.length
  const columns = new Float64Array(MATTER_COLUMNS * rows)
  const { juice, fat } = yieldOf(input, input.boneShare)
  for (let i = 0; i < rows; i++) {
    const tempC = input.fromC + i
    columns[MATTER_COLUMNS * i] = input.k_WpMK[i] as number
    columns[MATTER_COLUMNS * i + 1] = input.rhoCp_JpM3K[i] as number
    columns[MATTER_COLUMNS * i + 2] = (juice + fat) * letGoAt(tempC)
    columns[MATTER_COLUMNS * i + 3] = input.lethalityPerS(tempC)
  }
  const waterKgpM3 = input.rhoKgpM3 * input.water * (1 - input.boneShare)
  return {
    fromC: input.fromC,
    rows,
    columns,
    rhoKgpM3: input.rhoKgpM3,
    juiceShare: juice / (juice + fat || 1),
    dryableKgpM3: DRYABLE_SHARE * waterKgpM3,
    boilableKgpM3: waterKgpM3 - juice * input.rhoKgpM3,
    losableFrac: (input.water + input.fat) * (1 - input.boneShare),
  }
}

/** How one member differs from its matter: factors on k, ρc and what is let go, and the share of the juice that feeds the skin. */
export interface MeatScale {
  readonly k: number
  readonly c: number
  readonly juice: number
  readonly feed: number
  readonly boilingC: number
}

/** A probe's place in the column: between node `below` and the next, `part` of the way. */
export interface Place {
  readonly below: number
  readonly part: number
}

/**
 * Mass lost, share of the raw mass, from kg/m² of skin. Drying at the skin and boiling within draw on one water but are kept
 * in two books; only a roast dried right through could lose some of it twice.
 */
export const lossFracOf = (matter: Matter, { exponent }: Mesh, halfThicknessM: number, lostKgpM2: number) =>
  Math.min(matter.losableFrac, (lostKgpM2 * (exponent + 1)) / (halfThicknessM * matter.rhoKgpM3))

/** Water of each node that can boil off, kg/m² of skin. */
export const boilableOf = ({ boilableKgpM3 }: Matter, { cell }: Mesh, halfThicknessM: number) =>
  cell.map((v) => v * halfThicknessM * boilableKgpM3)

/** Conductivity and heat capacity of the raw material at a temperature. */
export function rawAt({ columns, fromC, rows }: Matter, tempC: number) {
  const row = Math.min(rows - 1.001, Math.max(0, tempC - fromC))
  const low = Math.floor(row)
  const at = (column: number) => {
    const here = columns[MATTER_COLUMNS * low + column] as number
    return here + (row - low) * ((columns[MATTER_COLUMNS * (low + 1) + column] as number) - here)
  }
  return { k: at(0), c: at(1) }
}

/** Where r = `share` · R lies. */
export function placeIn({ place, count }: Mesh, share: number): Place {
  let below = 0
  while (below < count - 2 && (place[below + 1] as number) < share) below++
  const a = place[below] as number
  return { below, part: (share - a) / ((place[below + 1] as number) - a) }
}

export class Meat {
  readonly mesh: Mesh
  /** Temperatures now, centre first, skin last. */
  nodesC: Float64Array
  /** Temperatures after the tried step. */
  nextC: Float64Array
  readonly peakC: Float64Array
  readonly juice: Float64Array
  readonly logKill: Float64Array
  /**
   * One budget of water, per m² of skin: juice let go feeds the skin, or runs out at the cut ends and drips; what evaporates
   * or boils beyond the feed is dried out of the meat, and a wet skin sheds the feed it cannot evaporate.
   */
  evaporatedKgpM2 = 0
  boiledKgpM2 = 0
  drippedKgpM2 = 0
  dryKgpM2 = 0
  private readonly kNow: Float64Array
  private readonly cNow: Float64Array
  private readonly kBefore: Float64Array
  private readonly cBefore: Float64Array
  private letGoRate = 0
  private lastStepS = 0
  private tried = { stepS: 0, evaporatedKgpM2: 0 }
  private readonly boilable: Float64Array
  /** Nodes that the tried step holds at the boiling point. */
  private readonly held: Uint8Array
  private readonly inside: Interior
  private readonly skin: TwoSidedSkin

  constructor(
    private readonly matter: Matter,
    mesh: Mesh,
    readonly halfThicknessM: number,
    startC: number,
    law: SkinLaw,
    private readonly scale: MeatScale,
  ) {
    const row = (value: number) => new Float64Array(mesh.count).fill(value)
    this.mesh = mesh
    this.inside = interior(mesh, halfThicknessM)
    this.nodesC = row(startC)
    this.nextC = row(startC)
    this.kNow = row(0)
    this.cNow = row(0)
    this.kBefore = row(0)
    this.cBefore = row(0)
    this.peakC = row(startC)
    this.juice = row(0)
    this.logKill = row(0)
    this.held = new Uint8Array(mesh.count)
    this.boilable = boilableOf(matter, mesh, halfThicknessM)
    this.skin = new TwoSidedSkin(law, startC)
    this.age(0, this.nodesC)
  }

  /**
   * Computes `nextC` after a step between two surroundings; nothing else changes until `accept`.
   * Returns the skin's error estimate, K.
   */
  try(stepS: number, start: Around, end: Around): number {
    for (let i = 0; i < this.mesh.count; i++) this.held[i] = this.boils(i) ? 1 : 0
    let error: number
    do {
      this.foresee(stepS)
      this.skin.begin(start, end, this.dryKgpM2, this.feedOf(this.letGoRate), stepS)
      error = stepInterior(this.inside, this.nextC, this.nodesC, this.skin, stepS)
    } while (this.release())
    this.tried.stepS = stepS
    this.tried.evaporatedKgpM2 = this.skin.lostKgpM2()
    return error
  }

  /** Makes the tried step so: boils off what is above the boiling point, lets juice go, adds up kill and peaks. */
  accept() {
    const { stepS } = this.tried
    const boiled = this.boil()
    const letGo = this.age(stepS, this.nextC)
    this.settle(this.tried.evaporatedKgpM2, boiled, letGo)
    const spare = this.nodesC
    this.nodesC = this.nextC
    this.nextC = spare
    this.lastStepS = stepS
  }

  /** The crust's outside at the end of the last step tried. */
  get outerC() {
    return this.skin.outerC
  }

  lossFrac = () =>
    lossFracOf(this.matter, this.mesh, this.halfThicknessM, this.evaporatedKgpM2 + this.boiledKgpM2 + this.drippedKgpM2)

  /** Of what is let go, kg/m² of skin or its rate, the part that keeps the skin wet. */
  private feedOf = (letGo: number) => this.scale.feed * this.matter.juiceShare * letGo

  private settle(evaporated: number, boiled: number, letGo: number) {
    const dry = this.dryKgpM2 + evaporated + boiled - this.feedOf(letGo)
    this.evaporatedKgpM2 += evaporated
    this.boiledKgpM2 += boiled
    this.dryKgpM2 = Math.max(0, dry)
    this.drippedKgpM2 += letGo - this.feedOf(letGo) + this.dryKgpM2 - dry
  }

  /** Properties at the middle of the step, each carried on as it has been changing. */
  private foresee(stepS: number) {
    const { k, c } = this.inside
    const carry = this.lastStepS > 0 ? Math.min(1, stepS / (2 * this.lastStepS)) : 0
    for (let i = 0; i < this.mesh.count; i++) {
      const kNow = this.kNow[i] as number
      const cNow = this.cNow[i] as number
      k[i] = kNow + carry * (kNow - (this.kBefore[i] as number))
      const plain = cNow + carry * (cNow - (this.cBefore[i] as number))
      c[i] = this.held[i] ? HELD * plain : plain
    }
  }

  private boils = (i: number) =>
    i < this.mesh.count - 1 && (this.nodesC[i] as number) >= this.scale.boilingC && (this.boilable[i] as number) > 0

  /**
   * Lets go of nodes that would not boil through the whole step, because they cool or their water runs out; true where
   * there was one. Held all the same they would lose heat as if they were still hot, and fall past their neighbours.
   */
  private release(): boolean {
    let any = false
    for (let i = 0; i < this.mesh.count; i++) {
      if (!this.held[i]) continue
      const heat = ((this.nextC[i] as number) - this.scale.boilingC) * (this.inside.heat[i] as number)
      if (heat >= 0 && heat <= (this.boilable[i] as number) * LATENT_JPKG) continue
      this.held[i] = 0
      any = true
    }
    return any
  }

  /** Beneath the skin no node passes the boiling point while it has water left; the heat above it carries vapour away. */
  private boil(): number {
    const { boilingC } = this.scale
    let boiled = 0
    for (let i = this.mesh.count - 2; i >= 0; i--) {
      const above = (this.nextC[i] as number) - boilingC
      if (above <= 0) continue
      const heat = above * (this.inside.heat[i] as number)
      const water = Math.min(heat / LATENT_JPKG, this.boilable[i] as number)
      this.boilable[i] = (this.boilable[i] as number) - water
      boiled += water
      const short = heat - water * LATENT_JPKG
      this.nextC[i] = this.boilable[i] ? boilingC : boilingC + short / (this.inside.heat[i] as number)
    }
    return boiled
  }

  /** Peaks, juice and kill after a step, and the properties at the temperatures now; returns what was let go, kg/m². */
  private age(stepS: number, tempC: Float64Array): number {
    const { columns, fromC, rows, rhoKgpM3 } = this.matter
    const { cell } = this.mesh
    const gain = 1 - Math.exp(-stepS / JUICE_TIME_S)
    let letGo = 0
    let behind = 0
    for (let i = 0; i < this.mesh.count; i++) {
      const temp = tempC[i] as number
      if (temp > (this.peakC[i] as number)) this.peakC[i] = temp
      const row = Math.min(rows - 1.001, Math.max(0, temp - fromC))
      const low = Math.floor(row)
      const part = row - low
      const j = MATTER_COLUMNS * low
      const k = columns[j] as number
      const c = columns[j + 1] as number
      const juiceInTheEnd = columns[j + 2] as number
      const kill = columns[j + 3] as number
      const inTheEnd = juiceInTheEnd + part * ((columns[j + MATTER_COLUMNS + 2] as number) - juiceInTheEnd)
      const before = this.juice[i] as number
      const short = Math.max(0, this.scale.juice * inTheEnd - before)
      const more = gain * short
      const juice = before + more
      this.juice[i] = juice
      letGo += more * (cell[i] as number)
      behind += (short - more) * (cell[i] as number)
      this.logKill[i] =
        (this.logKill[i] as number) + stepS * (kill + part * ((columns[j + MATTER_COLUMNS + 3] as number) - kill))
      this.kBefore[i] = this.kNow[i] as number
      this.cBefore[i] = this.cNow[i] as number
      this.kNow[i] = this.scale.k * conductionLeft(juice) * (k + part * ((columns[j + MATTER_COLUMNS] as number) - k))
      this.cNow[i] = this.scale.c * capacityLeft(juice) * (c + part * ((columns[j + MATTER_COLUMNS + 1] as number) - c))
    }
    const perCell = rhoKgpM3 * this.halfThicknessM
    this.letGoRate = (behind * perCell) / JUICE_TIME_S
    return letGo * perCell
  }
}

export const tempAt = ({ below, part }: Place, row: Float64Array) =>
  (row[below] as number) + part * ((row[below + 1] as number) - (row[below] as number))

/** The skin law at both ends of one step, with the water that leaves and comes between. */
class TwoSidedSkin implements SkinSide {
  net_WpM2 = 0
  slope_WpM2K = 0
  private readonly out = skinHeat()
  private start: Around | undefined
  private finish: Around | undefined
  private dryKgpM2 = 0
  private feed_KgpM2S = 0
  private startRate = 0
  private shift_WpM2 = 0
  private endRate = 0
  private stepS = 0

  constructor(
    private readonly law: SkinLaw,
    /** The crust's outside. */
    public outerC: number,
  ) {}

  begin(start: Around, finish: Around, dryKgpM2: number, feed_KgpM2S: number, stepS: number) {
    this.start = start
    this.finish = finish
    this.dryKgpM2 = dryKgpM2
    this.feed_KgpM2S = feed_KgpM2S
    this.stepS = stepS
  }

  at(skinC: number, end: 0 | 1) {
    const drying = end === 0 ? 0 : this.stepS * (this.startRate - this.feed_KgpM2S)
    const around = end === 0 ? this.start : this.finish
    if (around === undefined) throw new RangeError('a step needs surroundings at both ends')
    this.law(this.out, skinC, Math.max(0, this.dryKgpM2 + drying), around)
    const { out } = this
    // surroundings that change within the step: without its share in both stages a stiff skin runs ahead of them
    if (end === 0 && this.finish !== undefined)
      this.shift_WpM2 =
        GAMMA *
        (out.perAir_WpM2K * (this.finish.airC - around.airC) +
          out.perRadiant_WpM2K * (this.finish.radiantC - around.radiantC))
    this.net_WpM2 = out.net_WpM2 + (end === 0 ? this.shift_WpM2 : -this.shift_WpM2)
    this.slope_WpM2K = out.slope_WpM2K
    this.outerC = out.outerC
    if (end === 0) {
      this.startRate = out.water_KgpM2S
    } else {
      this.endRate = out.water_KgpM2S
    }
  }

  /** Water that evaporates in the step; less than none where it condenses. */
  lostKgpM2 = () => (this.stepS * (this.startRate + this.endRate)) / 2
}
