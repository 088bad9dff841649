import type { Law } from '../figures/figure.ts'

/**
 * Minutes a kilometre on a slope, as the Swiss yellow signposts reckon: a polynomial of degree 15, straight lines beyond ±40 %.
 *   min/km = Σ C_i·s^i,  s = 10·rise/run,  −4 < s < 4;   17·s for s ≥ 4;   −9·s for s ≤ −4
 * By Horner in double precision, coefficients not rounded. The federation means it for −25 % to +25 %; the wider range is the geoportal's.
 * One copy elsewhere prints C15 with a plus: with minus the polynomial meets the outer lines (66.9 to 68.0 at +40 %), with plus it misses by 3000.
 * Source: open source of the federal geoportal, profile service (read); fitted in the 1980s to over 150 measured stretches (read).
 */
export const swissSignpost = {
  name: 'Walking time (Swiss signposts)',
  formula: 'min/km = Σ Cᵢ·sⁱ, s = 10·rise/run',
  source: { cite: 'Swiss hiking-trail polynomial, coefficients of the federal geoportal', known: 'read' },
  takes: { gradeRatio: 'rise/run' },
  unit: 'min/km',
  cautions: ({ gradeRatio }) => (Math.abs(gradeRatio) > 0.25 ? ['The federation means its formula for −25 % to +25 %.'] : []),
  compute: ({ gradeRatio }) => minutesPerKm(10 * gradeRatio),
} as const satisfies Law<{ gradeRatio: 'rise/run' }, 'min/km'>

// C0 … C15.
const C = [
  14.271, 3.6991, 2.5922, -1.4384, 0.32105, 0.81542, -0.090261, -0.20757, 0.010192, 0.028588, -0.00057466, -0.0021842, 1.5176e-5, 8.6894e-5,
  -1.3584e-7, -1.4026e-6,
] as const

function minutesPerKm(s: number): number {
  if (s >= 4) return 17 * s
  if (s <= -4) return -9 * s
  return C.reduceRight<number>((sum, coefficient) => sum * s + coefficient, 0)
}
