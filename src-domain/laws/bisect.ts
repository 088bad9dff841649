/**
 * The root of a steadily rising function between two bounds, to a hair over the precision of doubles.
 * Halving, and where three points lie smoothly enough inverse quadratic steps, always inside a bracket that shrinks from both ends
 * (Chandrupatla 1997; memory): about ten values where halving alone takes sixty.
 * Below the root the function is negative. Where there is no root inside, the nearer bound is returned: the caller tests for that first.
 */
export function rootOfRising(rising: (x: number) => number, low: number, high: number): number {
  let [a, b, c] = [high, low, high]
  let [fa, fb, fc] = [rising(high), rising(low), 0]
  if (!(fb < 0)) return low
  if (!(fa > 0)) return high
  fc = fa
  let share = 0.5
  for (let i = 0; i < 200; i++) {
    const x = a + share * (b - a)
    const fx = rising(x)
    if (fx > 0 === fa > 0) [c, fc] = [a, fa]
    else [c, fc, b, fb] = [b, fb, a, fa]
    ;[a, fa] = [x, fx]
    const nearer = Math.abs(fa) < Math.abs(fb) ? a : b
    const least = (2 * Number.EPSILON * Math.abs(nearer) + 1e-15) / Math.abs(b - a)
    if (least > 0.5 || fa === 0 || fb === 0) return nearer
    share = Math.min(1 - least, Math.max(least, nextShare(a, b, c, fa, fb, fc)))
  }
  return (a + b) / 2
}

/** Where between a and b to look next: the inverse parabola through all three, if it is trusted there, else the middle. */
function nextShare(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const xi = (a - b) / (c - b)
  const phi = (fa - fb) / (fc - fb)
  if (!(phi * phi < xi && (1 - phi) ** 2 < 1 - xi)) return 0.5
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
}
