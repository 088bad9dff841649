/**
 * How long worn clothing holds in the cold: until 40 Wh/m² of body heat are owed (DLE of ISO 11079).
 *   worn clothing in use  Iclr = (Icl + 0.085/fcl)·K − Ia/fcl, fcl = 1 + 1.197·Iclr, repeated to 1e-10
 *   S = root of B(Iclr, S);  t = −40/S hours while S < 0; no limit from S ≥ 0
 * clo worn as tables count it. Range and source: ireq.ts. Past 8 h it is said as "more than 8 h", never as a figure to plan on.
 * Two public ports differ past 5 h (one prints "more than 8" for any S above −8, another a negative time): here −40/S as it stands.
 */
import { rootOfRising } from './bisect.ts'
import { areaFactor, CLO_RSI, flows, termsOf, type Climate, type Criterion, type Terms } from './clothed-balance.ts'
import { ireqOutside, THINNEST_RSI } from './ireq.ts'
import { within, type Ranged } from './ranged.ts'

const DEBT_Wh_m2 = 40

export type Exposure =
  | { readonly limit: 'hours'; readonly hours: number; readonly storage: number }
  | { readonly limit: 'over-8-h' | 'none'; readonly storage: number }

/** Worn clothing in use, m²K/W. */
export function resultant(terms: Terms, wornClo: number): number {
  let rsi = Math.max(0, wornClo) * CLO_RSI
  for (let i = 0; i < 200; i++) {
    const area = areaFactor(rsi)
    const next = Math.max(THINNEST_RSI, (wornClo * CLO_RSI + 0.085 / area) * terms.kept - terms.air / area)
    if (Math.abs(next - rsi) < 1e-10) return next
    rsi = next
  }
  return rsi
}

/** Heat stored (below zero: owed) per hour in this clothing, W/m². */
export const storageFor = (terms: Terms, rsi: number): number => rootOfRising((storage) => -flows(terms, rsi, storage).left, -2000, 2000)

export function exposure(climate: Climate, criterion: Criterion, wornClo: number): Ranged<Exposure> {
  const no = ireqOutside(climate)
  if (no) return no
  const terms = termsOf(climate, criterion)
  const storage = storageFor(terms, resultant(terms, wornClo))
  if (storage >= 0) return within({ limit: 'none', storage })
  const hours = -DEBT_Wh_m2 / storage
  return within(hours > 8 ? { limit: 'over-8-h', storage } : { limit: 'hours', hours, storage })
}
