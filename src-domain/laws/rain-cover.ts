/**
 * How much cover rain asks for, and how much a cover of each kind is: counts, not millimetres. Full cover 2, weak cover 1, none 0.
 *   upper body: none 0/0 (in mountains 0/1) · showers 1/2 · wet days 1/2                       need/enough
 *   legs:       none 0/0 · showers 0/0 (under 10 °C 0/1) · wet days 0/1 (with wind and under 10 °C 1/1); a leg cover counts 1
 *   dry store:  none 0/0 · showers 0/2 · wet days 1/2
 * No forecast of rain and no knowledge of seams: all classes are choices. "With wind" is 20 km/h and more at 10 m (Beaufort 4; choice).
 */
import type { RainClass } from '../trips/brief.ts'

export interface CoverAsked {
  readonly need: number
  readonly enough: number
}

export const WINDY_KMH = 20
export const COOL_C = 10

const asks = (need: number, enough: number): CoverAsked => ({ need, enough })

export function upperCoverAsked(rain: RainClass, mountains: boolean): CoverAsked {
  if (rain === 'none') return mountains ? asks(0, 1) : asks(0, 0)
  return asks(1, 2)
}

export function legCoverAsked(rain: RainClass, cool: boolean, windy: boolean): CoverAsked {
  if (rain === 'none') return asks(0, 0)
  if (rain === 'showers') return asks(0, cool ? 1 : 0)
  return asks(cool && windy ? 1 : 0, 1)
}

export function dryStoreAsked(rain: RainClass): CoverAsked {
  if (rain === 'none') return asks(0, 0)
  return asks(rain === 'wet' ? 1 : 0, 2)
}

/** What each kind of cover is worth, by duty. */
export const coverWorth = {
  'rain-shell': { jacket: 2, poncho: 2, cape: 2, 'long-poncho': 2, umbrella: 1, 'wind-shirt': 1 },
  'rain-legs': { trousers: 1, chaps: 1, kilt: 1, 'long-poncho': 1 },
  'dry-store': { 'pack-liner': 2, 'dry-bag': 2, 'waterproof-pack': 2, 'pack-cover': 1 },
} as const satisfies Record<string, Readonly<Record<string, number>>>
export type CoverDuty = keyof typeof coverWorth

/** Worth of a kind at a duty; null: no kind is said, or one that does not belong there. */
export function worthOf(duty: CoverDuty, kind: string): number | null {
  const worths: Readonly<Record<string, number>> = coverWorth[duty]
  return Object.hasOwn(worths, kind) ? worths[kind]! : null
}
