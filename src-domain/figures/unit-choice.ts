/** Metric or US customary, chosen by the person for each kind of quantity. */
export type UnitSystem = 'metric' | 'us'
export interface UnitChoice {
  readonly mass: UnitSystem
  readonly length: UnitSystem
  readonly temp: UnitSystem
  readonly volume: UnitSystem
}
export const metric: UnitChoice = { mass: 'metric', length: 'metric', temp: 'metric', volume: 'metric' }
export const us: UnitChoice = { mass: 'us', length: 'us', temp: 'us', volume: 'us' }
