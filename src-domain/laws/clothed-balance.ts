/**
 * The heat balance of a clothed person in the cold (ISO 11079): what is left of the heat made, for a clothing resistance and a storage.
 *   fcl = 1 + 1.197·I;  Rt = (0.06/0.38)·(Ia + I);  E = wet·(psk − pa)/Rt;  q = M − W − E − H − S;  Tcl = Tsk − I·q
 *   hr = 5.67e-8·0.95·0.77·((273 + Tcl)⁴ − (273 + tr)⁴)/(Tcl − tr);  hc = 1/Ia − hr
 *   B(I, S) = q − fcl·hr·(Tcl − tr) − fcl·hc·(Tcl − ta)      W/m²; rises with I, falls with S
 * Two criteria: minimal (a narrow, cool balance) Tsk = 33.34 − 0.0354·M, wet 0.06; neutral Tsk = 35.7 − 0.0285·M, wet 0.001·M.
 * I, Ia m²K/W; M, W, S W/m²; temperatures °C. Clipped first, as published: M 58 … 400, ta ≤ 10 °C, w at least 0.0052·(M − 58), v and p as
 * in air-layer.ts. The program's 273 is kept. Below 0 K (absurd clothing) Tcl stays at 0 K, so that B keeps rising.
 * Source: ISO 11079:2007, three public ports of its authors' program (read).
 */
import { airLayer, windCorrection } from './air-layer.ts'
import { breathingLoss } from './breathing-loss.ts'
import { MOISTURE_INDEX } from './skin-drive.ts'
import { vapour_kPa } from './saturation-vapour.ts'

export interface Climate {
  /** M: heat production, W/m² of body. */
  readonly heat: number
  /** W: work done on the outside, W/m². */
  readonly work: number
  readonly airC: number
  /** Radiant temperature; the air's outdoors in the shade. */
  readonly radiantC: number
  /** p: air permeability of the outer layer, l/m²s. */
  readonly permeability: number
  readonly walkMs: number
  /** Air speed at the body. */
  readonly windMs: number
  readonly rhPct: number
}

export type Criterion = 'minimal' | 'neutral'

export const HEAT_FLOOR_W_m2 = 58
export const HEAT_CEILING_W_m2 = 400
export const COLD_BELOW_C = 10
export const CLO_RSI = 0.155

/** The climate as the program takes it. */
export function clipped(climate: Climate): Climate {
  const heat = Math.min(HEAT_CEILING_W_m2, Math.max(HEAT_FLOOR_W_m2, climate.heat))
  const mild = climate.airC > COLD_BELOW_C
  return {
    ...climate,
    heat,
    airC: mild ? COLD_BELOW_C : climate.airC,
    radiantC: mild ? COLD_BELOW_C : climate.radiantC,
    walkMs: Math.min(1.2, Math.max(climate.walkMs, 0.0052 * (heat - 58))),
  }
}

/** What of the balance does not hang on the clothing. */
export interface Terms {
  readonly climate: Climate
  readonly skinC: number
  readonly wet: number
  readonly breath: number
  /** Ia, m²K/W. */
  readonly air: number
  /** K, what wind, walking and leaky cloth leave. */
  readonly kept: number
  readonly moist_kPa: number
}

export function termsOf(given: Climate, criterion: Criterion): Terms {
  const climate = clipped(given)
  const { heat, airC, rhPct } = climate
  const skinC = criterion === 'minimal' ? 33.34 - 0.0354 * heat : 35.7 - 0.0285 * heat
  return {
    climate,
    skinC,
    wet: criterion === 'minimal' ? 0.06 : 0.001 * heat,
    breath: breathingLoss.compute({ heat, airC, rhPct }),
    air: airLayer.compute(climate),
    kept: windCorrection.compute(climate),
    moist_kPa: vapour_kPa(skinC) - (rhPct / 100) * vapour_kPa(airC),
  }
}

export const areaFactor = (rsi: number): number => 1 + 1.197 * rsi

export interface Flows {
  readonly evaporated: number
  /** Through the clothing, W/m². */
  readonly through: number
  readonly surfaceC: number
  readonly radiated: number
  readonly convected: number
  readonly left: number
}

/** Every flow for a clothing resistance I and a storage S. */
export function flows(terms: Terms, rsi: number, storage: number): Flows {
  const { heat, work, airC, radiantC } = terms.climate
  const evaporated = (terms.wet * terms.moist_kPa) / ((0.06 / MOISTURE_INDEX) * (terms.air + rsi))
  const through = heat - work - evaporated - terms.breath - storage
  const surfaceC = Math.max(-273, terms.skinC - rsi * through)
  const hr = radiative(surfaceC, radiantC)
  const area = areaFactor(rsi)
  const radiated = area * hr * (surfaceC - radiantC)
  const convected = area * (1 / terms.air - hr) * (surfaceC - airC)
  return { evaporated, through, surfaceC, radiated, convected, left: through - radiated - convected }
}

function radiative(surfaceC: number, radiantC: number): number {
  const factor = 5.67e-8 * 0.95 * 0.77
  const [a, b] = [273 + surfaceC, 273 + radiantC]
  return Math.abs(a - b) < 1e-6 ? factor * 4 * b ** 3 : (factor * (a ** 4 - b ** 4)) / (a - b)
}
