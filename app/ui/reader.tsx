'use client'
import { createContext, type ReactNode, useContext } from 'react'
import { CORES_OWN, type ReadersWay } from '@/lib/plan/as-read'

const Way = createContext<ReadersWay>(CORES_OWN)

/** Told by the server, so that both draw the same times. */
export const Reader = ({ way, children }: { way: ReadersWay; children: ReactNode }) => <Way value={way}>{children}</Way>
export const useReadersWay = (): ReadersWay => useContext(Way)
