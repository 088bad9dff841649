/**
 * What devices draw.
 *   lamp = lumens/110/0.85        W, 110 lm/W of light, 0.85 of the driver
 * All common practice, no source; the person's own figures replace them. Relative standard uncertainty ± 30 % as a rectangle: 0.173 (choice).
 * A 406 MHz beacon has a sealed, dated battery: look at its date, never count it as power.
 */
export const lampDrawW = (lumens: number): number => lumens / 110 / 0.85
/** 50 lumens, rounded: a lamp in camp and on a path (choice). */
export const USUAL_LAMP_W = 0.53
export const DRAW_U_SHARE = 0.3 / Math.sqrt(3)

export const draws_W = {
  'phone idle': 0.1,
  'phone recording': 0.4,
  'phone map': 1.3,
  'phone video': 2.5,
  'phone searching': 0.5,
  watch: 0.03,
  'satellite messenger': 0.05,
  'handheld receiver': 0.45,
} as const

/** Lamp hours in camp, each evening (choice). */
export const CAMP_LIGHT_h = 0.5
export const POWER_MARGIN = 0.25
