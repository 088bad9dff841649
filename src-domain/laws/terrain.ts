import type { Terrain } from '../trips/brief.ts'

/**
 * What the ground underfoot does to energy (η) and to time (N). The two are never put in place of each other.
 * η: blacktop 1.0, dirt road 1.1, light brush 1.2, heavy brush 1.5, bog 1.8, loose sand 2.1 (Soule and Goldman 1972, read);
 *    hard-packed snow 1.6 (later lists, read); path 1.1 and rocky or rooty path 1.2 (choice); boulders 1.5 (choice, no published figure).
 * N divides the walking law's speed. The published list has trails at 1.25, rough 1.67, bog 1.79, below trees off the path 2.00, rock 2.50;
 *    the default walking law is already a trail's speed, so each is taken over 1.25 and none is quicker than a path.
 * Sand and snow have no factor of time that a walker would believe (loose sand 1.19): null, the pace there is that of equal effort.
 * Source: lists after Herzog 2020 in a public package's documentation (read).
 */
export interface Ground {
  readonly energyFactor: number
  /** null: the speed at which the walker's power is that on a path. */
  readonly timeFactor: number | null
}

const TRAIL_N = 1.25

export const grounds: Readonly<Record<Terrain, Ground>> = {
  road: { energyFactor: 1, timeFactor: 1 },
  track: { energyFactor: 1.1, timeFactor: 1 },
  path: { energyFactor: 1.1, timeFactor: 1 },
  rough: { energyFactor: 1.2, timeFactor: 1.67 / TRAIL_N },
  brush: { energyFactor: 1.5, timeFactor: 2 / TRAIL_N },
  bog: { energyFactor: 1.8, timeFactor: 1.79 / TRAIL_N },
  sand: { energyFactor: 2.1, timeFactor: null },
  rock: { energyFactor: 1.5, timeFactor: 2.5 / TRAIL_N },
  snow: { energyFactor: 1.6, timeFactor: null },
}
