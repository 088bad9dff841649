import type { MassUnit } from '../figures/units.ts'

/** zero: stable and empty · moving: not settled · stable · under-zero: below the zero it was set to; shown, never kept. */
export type ScaleStatus = 'zero' | 'moving' | 'stable' | 'under-zero'

export interface ScaleReport {
  readonly status: ScaleStatus
  /** Whole milligrams; below nothing when under zero. */
  readonly massMg: number
  /** One count of the report: the scale's own step is this or a few of it. */
  readonly stepMg: number
  readonly unit: MassUnit
}
