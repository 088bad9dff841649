import type { TestItem } from '../loadout/kit.ts'

/** Beds, clothes and covers for the tests of warmth; figures are whatever a test needs, no real thing. */
const RSI = 0.1761101838

export const base: TestItem = { name: 'wool top', area: 'clothing', g: 180, duties: 'base-layer', traits: { 'garment-clo': 0.2 } }
export const bag = (ratedC: number, traits: TestItem['traits'] = { 'rating-kind': 'comfort' }): TestItem => ({
  name: `bag ${ratedC}`,
  area: 'sleep',
  g: 800,
  duties: 'top-insulation',
  traits: { 'rated-temperature': ratedC, ...traits },
})
/** A mat of this R (ft²·°F·h/Btu). */
export const mat = (r: number, traits: TestItem['traits'] = {}): TestItem => ({
  name: `mat R ${r}`,
  area: 'sleep',
  g: 400,
  duties: 'ground-insulation',
  traits: { 'thermal-resistance': r * RSI, ...traits },
})
export const garment = (name: string, duties: string, clo: number | null, traits: TestItem['traits'] = {}): TestItem => ({
  name,
  area: 'clothing',
  g: 200,
  duties,
  traits: { ...(clo === null ? {} : { 'garment-clo': clo }), ...traits },
})
export const cover = (duties: string, kind: string): TestItem => ({
  name: `${kind} for ${duties}`,
  area: 'clothing',
  g: 250,
  duties,
  traits: kind === '' ? {} : { 'cover-kind': kind },
})
