/**
 * What is left in a canister that feeds vapour: the lighter gas leaves first, so the last of it is weaker than the first.
 *   ni(τ) = ni0·exp(−pi·τ), τ such that Σ ni·Mi = r·Σ ni0·Mi      r share of the mass left, pi at the liquid's temperature
 * Exact for an ideal mix at constant temperature (Rayleigh's distillation, memory). A canister that feeds liquid (inverted) keeps its mix: r = 1.
 */
import { gases, gasMassShares, gasMolar_g_mol, moleShares, vapourPressureKPa, type GasMix } from './gas-pressure.ts'

/** Mass shares of what is left when the share `left` of the mass remains, drained as vapour at `liquidC`. */
export function drainedMix(mass: GasMix, left: number, liquidC: number): GasMix {
  const start = moleShares(mass)
  if (left >= 1) return gasMassShares(start)
  const rate = relativeRates(start, liquidC)
  const at = (tau: number): GasMix => ({
    propane: start.propane * Math.exp(-rate.propane * tau),
    isobutane: start.isobutane * Math.exp(-rate.isobutane * tau),
    butane: start.butane * Math.exp(-rate.butane * tau),
  })
  const asked = Math.max(left, 1e-6) * weight(start)
  let [low, high] = [0, 40] // the slowest gas has rate 1: e⁻⁴⁰ is less than the smallest share asked
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2
    if (weight(at(middle)) > asked) low = middle
    else high = middle
  }
  return gasMassShares(at((low + high) / 2))
}

const weight = (moles: GasMix): number => gases.reduce((sum, gas) => sum + moles[gas] * gasMolar_g_mol[gas], 0)

/** Vapour pressures over that of the slowest gas present. */
function relativeRates(moles: GasMix, liquidC: number): GasMix {
  const pressure = Object.fromEntries(gases.map((gas) => [gas, vapourPressureKPa(gas, liquidC)])) as Record<(typeof gases)[number], number>
  const slowest = Math.min(...gases.filter((gas) => moles[gas] > 0).map((gas) => pressure[gas]))
  return { propane: pressure.propane / slowest, isobutane: pressure.isobutane / slowest, butane: pressure.butane / slowest }
}
