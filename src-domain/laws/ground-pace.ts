import type { Terrain } from '../trips/brief.ts'
import { campbell2022 } from './campbell.ts'
import { REST_W_PER_KG } from './lcda-2022.ts'
import { speedRatio } from './speed-at-power.ts'
import { grounds } from './terrain.ts'

/**
 * How many times longer than on a path walking takes on a ground.
 *   N of the published list over a trail's 1.25, never under 1; without an N (sand, snow) the slowing of equal effort:
 *   v(η) : the walker's power there is that on a level path at path speed, for 70 kg with 10 kg (70 kg enter little: the law is per kg)
 * Source: laws/terrain.ts; equal effort is a choice and a consequence of the power law, not a measurement.
 * Caution: soft or deep snow and wading take longer than any of this.
 */
export const timeFactorOf = (terrain: Terrain): number => grounds[terrain].timeFactor ?? equalEffort(terrain)

function equalEffort(terrain: Terrain): number {
  const onPath = {
    bodyKg: 70,
    loadKg: 10,
    speedMs: campbell2022.compute({ slopeDeg: 0 }),
    gradePercent: 0,
    terrain: grounds.path.energyFactor,
    restWPerKg: REST_W_PER_KG,
  }
  const known = kept.get(terrain)
  if (known !== undefined) return known
  const factor = Math.max(1, 1 / speedRatio(onPath, { terrain: grounds[terrain].energyFactor }))
  kept.set(terrain, factor)
  return factor
}

const kept = new Map<Terrain, number>()
