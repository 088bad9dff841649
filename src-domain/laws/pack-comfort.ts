/**
 * What a pack carries in comfort, by its kind, to be offered and accepted as an estimate; without the pack's own figure its check stays unknown.
 *   heaviest moment ≤ 0.9 of it: enough · ≤ 1.0: tight · above: short
 * Common practice, no source: frameless 7 kg without and 9 kg with a belt (8 to 11), light frame 14, full frame 20.
 */
export const usualComfortKg = { frameless: 9, 'light-framed': 14, framed: 20 } as const
export const COMFORT_SHARE = 0.9
