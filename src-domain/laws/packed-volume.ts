/**
 * Room that a thing takes in the pack.
 *   V = m/ρ        l, m kg, ρ kg/l packed
 *   V need = Σ Vi/f        f 0.95 soft gear, 0.85 with a hard canister (choice); outside and nested things count nothing
 * Densities by class are common practice, no source, ± 30 % (a rectangle: 0.173); a stuffed volume measured by the person is ± 5 %.
 * A pack's rated litres follow ASTM F2153-07(2018), enclosed compartments filled with 20 mm balls (read); claimed figures are ± 10 % (common practice).
 */
import type { KitArea } from '../closet/vocabulary.ts'
import type { Law } from '../figures/figure.ts'

export const packedDensities_kg_l = {
  down: 0.1,
  synthetic: 0.07,
  fleece: 0.1,
  shell: 0.2,
  base: 0.22,
  fabric: 0.3,
  poles: 0.6,
  mat: 0.35,
  foam: 0.04,
  pots: 0.2,
  dense: 0.5,
  food: 0.45,
} as const
export type PackedClass = keyof typeof packedDensities_kg_l

/** Standard uncertainties, relative: by class, measured stuffed, a pack's claimed litres. */
export const CLASS_U_SHARE = 0.3 / Math.sqrt(3)
export const MEASURED_U_SHARE = 0.05
export const PACK_U_SHARE = 0.1 / Math.sqrt(3)

export const SOFT_FILL = 0.95
export const HARD_FILL = 0.85
export const ROOM_MARGIN = 0.05

/** Outer room of a gas canister by its net grams, l. */
export const canisterVolumeL = (netG: number): number => (netG <= 120 ? 0.33 : netG <= 260 ? 0.65 : 1.1)

/** What the person's own words for it mean (trait `packing-class`). */
const said: Readonly<Record<string, PackedClass>> = { hard: 'dense', firm: 'fabric', soft: 'shell', down: 'down' }

const byArea: Readonly<Record<KitArea, PackedClass>> = {
  shelter: 'fabric',
  sleep: 'synthetic',
  carry: 'fabric',
  clothing: 'shell',
  footwear: 'base',
  kitchen: 'pots',
  water: 'pots',
  food: 'food',
  light_power: 'dense',
  wayfinding: 'dense',
  care: 'dense',
  extras: 'dense',
}
const byDuty: Readonly<Record<string, PackedClass>> = {
  pole: 'poles',
  stake: 'poles',
  groundsheet: 'fabric',
  'ground-insulation': 'mat',
  'top-insulation': 'synthetic',
  'mid-layer': 'fleece',
  'big-jacket': 'synthetic',
  'base-layer': 'base',
  'dry-base': 'base',
  socks: 'base',
  stove: 'dense',
  'fire-starter': 'dense',
}

/** The class taken: as said, else down where it is filled with it, else by its first telling duty, else by its kit area. */
export function packedClass(thing: {
  readonly kitArea: KitArea
  readonly duties: readonly string[]
  readonly fill: string
  readonly said: string
}): PackedClass {
  const own = said[thing.said]
  if (own !== undefined) return own
  if (thing.fill === 'down') return 'down'
  const telling = thing.duties.find((duty) => byDuty[duty] !== undefined)
  return telling === undefined ? byArea[thing.kitArea] : byDuty[telling]!
}

export const packedVolume = {
  name: 'Room by its class',
  formula: 'V = m/ρ',
  source: { cite: 'packed densities by class, ± 30 %', known: 'common practice, no source' },
  takes: { massKg: 'kg', density: 'kg/l' },
  unit: 'l',
  compute: ({ massKg, density }) => massKg / density,
} as const satisfies Law<{ massKg: 'kg'; density: 'kg/l' }, 'l'>

export const packedRoom = {
  name: 'Room the kit asks for',
  formula: 'V = Σ Vi/f',
  source: { cite: '0.95 of the room filled by soft gear, 0.85 with hard things', known: 'choice' },
  takes: { volumeL: 'l', fill: '1' },
  unit: 'l',
  compute: ({ volumeL, fill }) => volumeL / fill,
} as const satisfies Law<{ volumeL: 'l'; fill: '1' }, 'l'>
