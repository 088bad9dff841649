/**
 * The sun's events by the equations of the NOAA solar calculator (Meeus, low precision): a second route for the product's sun, good to a minute.
 * Coefficients from memory, confirmed by published USNO minutes (walking.md 5.1 to 5.3). Sine terms in degrees.
 * Keyed on the local civil date; minutes count from 0 h UTC of that date and may be below 0 or above 1440.
 */
export interface NoaaDay {
  readonly noonMin: number
  /** null: the sun does not pass that line. */
  readonly rise: number | null
  readonly set: number | null
  readonly dawn: number | null
  readonly dusk: number | null
}

const DAY_MS = 86_400_000
const rad = (deg: number) => (deg * Math.PI) / 180
const deg = (angle: number) => (angle * 180) / Math.PI
const sin = (angle: number) => Math.sin(rad(angle))
const cos = (angle: number) => Math.cos(rad(angle))

/** Declination in degrees and equation of time in minutes at a moment. */
export function sunPosition(ms: number): { readonly declDeg: number; readonly eotMin: number } {
  const T = (ms / DAY_MS + 2440587.5 - 2451545) / 36525
  const L0 = (280.46646 + T * (36000.76983 + 0.0003032 * T)) % 360
  const M = 357.52911 + T * (35999.05029 - 0.0001537 * T)
  const e = 0.016708634 - T * (0.000042037 + 0.0000001267 * T)
  const C = sin(M) * (1.914602 - T * (0.004817 + 0.000014 * T)) + sin(2 * M) * (0.019993 - 0.000101 * T) + 0.000289 * sin(3 * M)
  const Om = 125.04 - 1934.136 * T
  const lambda = L0 + C - 0.00569 - 0.00478 * sin(Om)
  const eps0 = 23 + (26 + (21.448 - T * (46.815 + T * (0.00059 - 0.001813 * T))) / 60) / 60
  const eps = eps0 + 0.00256 * cos(Om)
  const y = Math.tan(rad(eps / 2)) ** 2
  const eot = y * sin(2 * L0) - 2 * e * sin(M) + 4 * e * y * sin(M) * cos(2 * L0) - 0.5 * y * y * sin(4 * L0) - 1.25 * e * e * sin(2 * M)
  return { declDeg: deg(Math.asin(sin(eps) * sin(lambda))), eotMin: 4 * deg(eot) }
}

/** The day of a local civil date (ISO), by place. */
export function noaaDay(isoDate: string, latDeg: number, lonDeg: number): NoaaDay {
  const midnightMs = Date.parse(`${isoDate}T00:00:00Z`)
  let noonMin = 720 - 4 * lonDeg
  for (let round = 0; round < 3; round++) noonMin = 720 - 4 * lonDeg - sunPosition(midnightMs + noonMin * 60_000).eotMin
  const at = (altitudeDeg: number, side: -1 | 1) => eventMin(midnightMs, noonMin, latDeg, lonDeg, altitudeDeg, side)
  return { noonMin, rise: at(-0.833, -1), set: at(-0.833, 1), dawn: at(-6, -1), dusk: at(-6, 1) }
}

function eventMin(midnightMs: number, noonMin: number, latDeg: number, lonDeg: number, altitudeDeg: number, side: -1 | 1): number | null {
  let minute = noonMin
  for (let round = 0; round < 6; round++) {
    const { declDeg, eotMin } = sunPosition(midnightMs + minute * 60_000)
    const cosH = (sin(altitudeDeg) - sin(latDeg) * sin(declDeg)) / (cos(latDeg) * cos(declDeg))
    if (Math.abs(cosH) > 1) return null
    minute = 720 - 4 * lonDeg - eotMin + side * 4 * deg(Math.acos(cosH))
  }
  return minute
}
