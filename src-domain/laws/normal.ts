/**
 * The normal distribution: Φ(z), the share of it below z standard deviations, and the z below which a share lies.
 *   Φ(z) = erfc(−z/√2)/2      erfc by its series up to 2.5, by its continued fraction beyond
 *   Φ⁻¹(q) by bisection on −8 … 8 (a share beyond 1e-15 is not asked of any law here)
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.6 and 7.1.14 (memory).
 */
export function normalShareBelow(z: number): number {
  return erfc(-z / Math.SQRT2) / 2
}

/** Φ⁻¹(q), 0 < q < 1; beyond the ends it stays at ±8. */
export function normalQuantile(q: number): number {
  let low = -8
  let high = 8
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (normalShareBelow(middle) < q) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** The complementary error function. */
export function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x)
  return x < 2.5 ? 1 - erfSeries(x) : erfcFraction(x)
}

/** erf x = 2/√π · e^(−x²) · Σ 2^n·x^(2n+1)/(2n+1)!! : every term is positive, so nothing cancels. */
function erfSeries(x: number): number {
  let term = x
  let sum = x
  for (let n = 1; term > sum * 1e-17 && n < 200; n++) {
    term *= (2 * x * x) / (2 * n + 1)
    sum += term
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum
}

/** erfc x = e^(−x²)/√π · 1/(x + (1/2)/(x + 1/(x + (3/2)/(x + …)))), taken from the inside out. */
function erfcFraction(x: number): number {
  let inner = x
  for (let n = 80; n >= 1; n--) inner = x + n / 2 / inner
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / inner
}
