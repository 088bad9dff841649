/**
 * The three temperatures on a sleeping bag's label as the sleepers behind them: skin temperature and heat production per m² of body.
 *   comfort: standard woman, relaxed, just not cold · limit: standard man, curled up · extreme: strong cold, risk of injury
 * EN 13537 and EN ISO 23537-1 keep their constants inside; those were not seen. Skin temperatures 32.8 and 32.9 °C were read on one trade
 * page (doubtful); 46.5 W/m² is 0.8 met (ASHRAE table, read; its choice is ours); 55.0 and the extreme pair are fitted to label triples.
 * Agreement: limit within 0.45 K of three labels, extreme exact on the two it was fitted to.
 */
export interface SleepScale {
  readonly skinC: number
  readonly heat_W_m2: number
}

export const sleepScales = {
  comfort: { skinC: 32.8, heat_W_m2: 46.5 },
  limit: { skinC: 32.9, heat_W_m2: 55.0 },
  extreme: { skinC: 31.3, heat_W_m2: 76.9 },
} as const satisfies Record<string, SleepScale>
export type ScaleName = keyof typeof sleepScales

/** How a rating as entered is read: on which scale, one standard uncertainty, and the best state it can support. */
export interface RatingKind {
  readonly scale: ScaleName
  readonly sigmaK: number
  /** `tight`: never better; a number: enough only with at least this margin, K. */
  readonly best: 'enough' | 'tight' | number
}

/** A maker's single figure sits nearer the limit (common practice, no source); so is a figure of no known kind. */
export const ratingKinds = {
  comfort: { scale: 'comfort', sigmaK: 2, best: 'enough' },
  limit: { scale: 'limit', sigmaK: 2, best: 'enough' },
  extreme: { scale: 'extreme', sigmaK: 5, best: 'tight' },
  maker: { scale: 'limit', sigmaK: 4, best: 6 },
} as const satisfies Record<string, RatingKind>
export type RatingKindName = keyof typeof ratingKinds

export const isRatingKind = (word: string): word is RatingKindName => Object.hasOwn(ratingKinds, word)

/**
 * Which unit a bare rating must have been typed in: above 25 nobody rates in °C; anything else must be asked.
 * A "40 degree" quilt of a maker who thinks in °F is 4.4 °C.
 */
export const bareRatingUnit = (typed: number): 'degF' | 'ask' => (typed > 25 ? 'degF' : 'ask')

/** Share of the body that faces the ground, and resistance between skin and mat under a bag and under an open quilt, m²K/W (choices). */
export const GROUND_SHARE = 0.3
export const UNDER_BAG_RSI = 0.1
export const UNDER_QUILT_RSI = 0.05
/** Night humidity, % (choice; ±20 moves results by up to 0.2 K). */
export const NIGHT_RH_PCT = 80
/** Share of the body that faces a mat inside a hammock (choice). */
export const HAMMOCK_GROUND_SHARE = 0.45
