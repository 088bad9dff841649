import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'

/** Interim, until src-domain/closet/weighing.ts exists: mean of the readings less the tare, a piece; doubts by provisions.md 9.1 without history and checks. */
export interface Reading {
  readonly readingsMg: readonly number[]
  readonly tareMg: number
  readonly tareKind: 'none' | 'button' | 'reading'
  readonly pieces: number
  readonly stepMg: number
  readonly capacityMg: number | null
}

export function worked({
  readingsMg,
  tareMg,
  tareKind,
  pieces,
  stepMg,
  capacityMg,
}: Reading): Outcome<{ massMg: number; uOwnMg: number; uGainMg: number }> {
  const over = readingsMg.find((mg) => capacityMg !== null && mg > capacityMg)
  if (over !== undefined && capacityMg !== null) return fault('weighing.over-capacity', { readingMg: over, capacityMg })
  const mean = readingsMg.reduce((sum, mg) => sum + mg, 0) / readingsMg.length
  const net = mean - (tareKind === 'button' ? 0 : tareMg)
  if (net < 0) return fault('weighing.negative', { netMg: net })
  const uRes = stepMg / Math.sqrt(tareKind === 'none' ? 12 : 6)
  return ok({
    massMg: Math.round(net / pieces),
    uOwnMg: Math.hypot(uRes, stepMg / 2) / pieces,
    uGainMg: (0.003 / Math.sqrt(3)) * (net / pieces),
  })
}
