/**
 * How much heat a fuel gives: the lower heating value, because the water it makes leaves as vapour and never warms the pot.
 *   LHV = −(nC·(−393.474) + nH/2·(−241.822) − ΔHf)/M      MJ/kg; nC, nH atoms to the molecule, ΔHf kJ/mol at 298.15 K, M g/mol
 * Source: heats of formation of CO2 and H2O from Active Thermochemical Tables 1.112 (read in an open chemistry data set). The note's own propane
 * agrees with a printed heat of combustion, −2219.2 ± 0.46 kJ/mol (read). A liquid draw loses its heat of evaporation, 0.7 to 0.8 %: left out.
 */
const CO2_kJ_mol = -393.474
const STEAM_kJ_mol = -241.822
const WATER_kJ_mol = -285.825
/** Heat that each kilogram of water in a fuel takes away as vapour, MJ/kg. */
export const EVAPORATION_MJ_kg = 2.443

export interface Compound {
  readonly carbon: number
  readonly hydrogen: number
  readonly formation_kJ_mol: number
  readonly molar_g_mol: number
  /** Liquid, 20 °C; of a gas under its own pressure. */
  readonly density_kg_l: number
}

const compound = (carbon: number, hydrogen: number, formation_kJ_mol: number, molar_g_mol: number, density_kg_l: number): Compound => ({
  carbon,
  hydrogen,
  formation_kJ_mol,
  molar_g_mol,
  density_kg_l,
})

/** Heats of formation read in the same data set, save 2-propanol (gas value read, 45.4 kJ/mol of evaporation memory) and hexamine (memory). */
export const compounds = {
  propane: compound(3, 8, -104.39, 44.097, 0.5),
  isobutane: compound(4, 10, -135.36, 58.124, 0.557),
  butane: compound(4, 10, -125.85, 58.124, 0.579),
  ethanol: compound(2, 6, -277.03, 46.069, 0.789),
  methanol: compound(1, 4, -238.4, 32.042, 0.791),
  propanol: compound(3, 8, -318.2, 60.096, 0.785),
  hexane: compound(6, 14, -198.49, 86.178, 0.655),
  heptane: compound(7, 16, -223.91, 100.205, 0.684),
  octane: compound(8, 18, -249.73, 114.232, 0.703),
  hexamine: compound(6, 12, 125.5, 140.19, 1.33),
} as const satisfies Record<string, Compound>
export type CompoundName = keyof typeof compounds

/** Lower heating value, MJ/kg: the water leaves as vapour. Nitrogen leaves as it came, at no heat. */
export const lowerHeatMJkg = (fuel: Compound): number => burned(fuel, STEAM_kJ_mol)
/** Higher heating value, MJ/kg: the water is caught as liquid. For comparing with printed tables only. */
export const higherHeatMJkg = (fuel: Compound): number => burned(fuel, WATER_kJ_mol)

const burned = (fuel: Compound, water_kJ_mol: number): number =>
  -(fuel.carbon * CO2_kJ_mol + (fuel.hydrogen / 2) * water_kJ_mol - fuel.formation_kJ_mol) / fuel.molar_g_mol

/** Heat value of a blend by mass shares; what is left to 1 is water, which takes heat away. */
export function blendHeatMJkg(shares: Readonly<Partial<Record<CompoundName, number>>>): number {
  let heat = 0
  let water = 1
  for (const [name, share] of Object.entries(shares) as [CompoundName, number][]) {
    heat += share * lowerHeatMJkg(compounds[name])
    water -= share
  }
  // Shares of thirds and the like may leave a rounding remainder that is no water.
  return water > 1e-9 ? heat - EVAPORATION_MJ_kg * water : heat
}

/** Mass shares from volume shares, no contraction: error under 1 % between alcohols; not for blends with water. */
export function massShares(volumes: Readonly<Partial<Record<CompoundName, number>>>): Readonly<Partial<Record<CompoundName, number>>> {
  const masses = (Object.entries(volumes) as [CompoundName, number][]).map(
    ([name, volume]) => [name, volume * compounds[name].density_kg_l] as const,
  )
  const all = masses.reduce((sum, [, mass]) => sum + mass, 0)
  return Object.fromEntries(masses.map(([name, mass]) => [name, mass / all]))
}

/** Wood, by the share of its wet mass that is water: 18.3 MJ/kg oven dry (17.5 to 19.4; higher value read, 6 % hydrogen). */
export const woodHeatMJkg = (moisture: number): number => 18.3 * (1 - moisture) - EVAPORATION_MJ_kg * moisture

/** What a stove is said to burn (trait `fuels`), when nothing better is known of the bottle. `u`: one standard uncertainty of the value. */
export interface FuelDefault {
  readonly heatMJkg: number
  readonly uMJkg: number
  readonly density_kg_l: number
  readonly cite: string
  readonly known: 'read' | 'memory' | 'choice'
}

export const fuelDefaults = {
  gas: {
    heatMJkg: blendHeatMJkg({ isobutane: 0.8, propane: 0.2 }),
    uMJkg: 0.03 * 45.7,
    density_kg_l: 0.546,
    cite: 'isobutane 80, propane 20 by mass, from heats of formation',
    known: 'read',
  },
  alcohol: { heatMJkg: 24, uMJkg: 2.5, density_kg_l: 0.8, cite: 'denatured alcohol of unknown make: 24.0 ± 2.5', known: 'choice' },
  petrol: { heatMJkg: 44, uMJkg: 0.03 * 44, density_kg_l: 0.72, cite: 'light naphtha 44.0 to 44.9; 0.69 to 0.75 kg/l', known: 'choice' },
  paraffin: { heatMJkg: 43.1, uMJkg: 0.03 * 43.1, density_kg_l: 0.8, cite: 'kerosene 42.8 to 43.5', known: 'memory' },
  solid: {
    heatMJkg: 0.95 * lowerHeatMJkg(compounds.hexamine),
    uMJkg: 0.03 * 26.7,
    density_kg_l: 1.33,
    cite: 'hexamine with 5 % binder',
    known: 'choice',
  },
  wood: { heatMJkg: woodHeatMJkg(0.2), uMJkg: 0.1 * 14.15, density_kg_l: 0.5, cite: 'wood at 20 % moisture', known: 'memory' },
} as const satisfies Record<string, FuelDefault>
export type FuelKind = keyof typeof fuelDefaults
export const isFuelKind = (code: string): code is FuelKind => Object.hasOwn(fuelDefaults, code)
