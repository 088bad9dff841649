/**
 * Pressure inside a gas canister.
 *   lg pi = A − B/(T + C)       vapour pressure of each gas, Pa, T K
 *   p = Σ xi·pi                 Raoult, ideal; xi mole shares from mass shares: xi = (wi/Mi)/Σ(wj/Mj)      kPa absolute
 * Source: Antoine constants of Poling, Prausnitz and O'Connell, The Properties of Gases and Liquids, 5th edition (read in an open data set).
 * Range: fitted −104 … −25 °C (propane), −83 … +7 °C (isobutane), −73 … +19 °C (butane); beyond it runs low by 1.0 % at most (propane, +20 °C)
 * against the Wagner equation, about 2 % at +50 °C (printed tables, memory). Good to +50 °C for a caution, not for the design of vessels.
 * Caution: never warm a canister with a flame; above 50 °C the usual mixes pass 900 kPa: keep them out of sun-hot cars.
 */
import type { Law } from '../figures/figure.ts'

export const gases = ['propane', 'isobutane', 'butane'] as const
export type Gas = (typeof gases)[number]
/** Shares of the mass (or, where said, of the molecules); they add to 1. */
export type GasMix = Readonly<Record<Gas, number>>

const antoine: Readonly<Record<Gas, readonly [number, number, number]>> = {
  propane: [8.92828, 803.997, -26.11],
  isobutane: [9.00272, 947.54, -24.28],
  butane: [8.93266, 935.773, -34.361],
}
export const gasMolar_g_mol: GasMix = { propane: 44.097, isobutane: 58.124, butane: 58.124 }

/** Vapour pressure of one pure gas, kPa absolute. */
export function vapourPressureKPa(gas: Gas, tempC: number): number {
  const [a, b, c] = antoine[gas]
  return 10 ** (a - b / (tempC + 273.15 + c)) / 1000
}

/** Temperature at which a pure gas boils under the pressure, °C. */
export function gasBoilsC(gas: Gas, pressureKPa: number): number {
  const [a, b, c] = antoine[gas]
  return b / (a - Math.log10(pressureKPa * 1000)) - c - 273.15
}

export const moleShares = (mass: GasMix): GasMix => normalised(eachGas((gas) => mass[gas] / gasMolar_g_mol[gas]))
export const gasMassShares = (moles: GasMix): GasMix => normalised(eachGas((gas) => moles[gas] * gasMolar_g_mol[gas]))

/** Pressure of a mix by mole shares, kPa absolute. */
export const mixPressureKPa = (moles: GasMix, tempC: number): number =>
  gases.reduce((sum, gas) => sum + moles[gas] * vapourPressureKPa(gas, tempC), 0)

type Takes = { liquidC: 'degC'; propane: '1'; isobutane: '1'; butane: '1' }

/** As a law, from mass shares. */
export const gasPressure = {
  name: 'Pressure in the canister',
  formula: 'p = Σ xi·10^(Ai − Bi/(T + Ci))',
  source: {
    cite: 'Antoine constants: Poling, Prausnitz and O’Connell, The Properties of Gases and Liquids, 5th ed.; Raoult’s law',
    known: 'read',
  },
  takes: { liquidC: 'degC', propane: '1', isobutane: '1', butane: '1' },
  unit: 'kPa',
  cautions: ({ liquidC }) => (liquidC > 50 ? ['Above 50 °C a canister may burst: keep it out of the sun and away from any flame.'] : []),
  compute: ({ liquidC, ...mass }) => mixPressureKPa(moleShares(mass), liquidC),
} as const satisfies Law<Takes, 'kPa'>

const eachGas = (of: (gas: Gas) => number): GasMix => ({ propane: of('propane'), isobutane: of('isobutane'), butane: of('butane') })

function normalised(amounts: GasMix): GasMix {
  const all = amounts.propane + amounts.isobutane + amounts.butane
  if (!(all > 0)) throw new Error('a gas mix holds nothing')
  return { propane: amounts.propane / all, isobutane: amounts.isobutane / all, butane: amounts.butane / all }
}
