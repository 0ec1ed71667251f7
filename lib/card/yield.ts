import type { Forecast } from '../model/forecast'
import { spreadOf } from '../model/quantiles'

/** Meat to slice, kg: what is lost is a share of the whole as weighed, and so is the bone, which loses nothing. */
export const cookedMeatKg = (massKg: number, boneShare: number, lossFrac: number) =>
  massKg * Math.max(0, 1 - boneShare - lossFrac)
export const rawMeatKg = (massKg: number, boneShare: number) => massKg * (1 - boneShare)
export const likelyMeatKg = ({ cook, lossFrac }: Forecast, boneShare: number) =>
  cookedMeatKg(cook.roast.mass, boneShare, spreadOf<number>(lossFrac).likely)
