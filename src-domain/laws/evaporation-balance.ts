/**
 * The evaporation a walker's skin needs to stay in balance, and the most the air can take.
 *   Ereq = M/A + 6.45/I·(ta − 36) + R          W/m²
 *   Emax = 14.21·(i/I)·(44 − Pa)               W/m²
 *   M net heat W, A skin m², I clothing clo, i/I permeability over insulation, ta air °C, R sun W/m² (0 shade, 60 full sun), Pa vapour pressure Torr
 *   Pa = RH·Ps(ta)·10⁶/133.322368; 44 Torr is saturation at skin of 36 °C
 * Light walking wear (choice): I = v^−0.25, i/I = 0.45·v^0.25, v air and walking speed, m/s, 0.4 to 2.5.
 * Source: form of Pandolf and Givoni–Goldman (memory); coefficients follow from the Lewis relation, 2.2 K/Torr × 6.45 W/(m² K).
 */
import { saturationPressureMPa } from './water-saturation.ts'

export interface SweatAir {
  readonly workW: number
  readonly skin_m2: number
  readonly airC: number
  /** 0 to 1. */
  readonly humidity: number
  readonly speedMs: number
  readonly sun_W_m2: number
}

export const FULL_SUN_W_m2 = 60

export function neededEvaporation(at: SweatAir): number {
  const clothingClo = clampSpeed(at.speedMs) ** -0.25
  return at.workW / at.skin_m2 + (6.45 / clothingClo) * (at.airC - 36) + at.sun_W_m2
}

export function mostEvaporation(at: SweatAir): number {
  return 14.21 * 0.45 * clampSpeed(at.speedMs) ** 0.25 * (44 - vapourTorr(at.airC, at.humidity))
}

/** Vapour pressure of air, Torr; the saturation formula begins at 0 °C and is level below. */
export const vapourTorr = (airC: number, humidity: number): number =>
  (humidity * saturationPressureMPa(Math.max(0, airC) + 273.15) * 1e6) / 133.322368

const clampSpeed = (speedMs: number): number => Math.min(2.5, Math.max(0.4, speedMs))
