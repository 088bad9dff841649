/**
 * Exact fractions of whole numbers: what a person types and what a unit is defined as are both exact, so a typed quantity is
 * worked without any rounding and rounded once, to the stored integer.
 */
export interface Ratio {
  readonly n: bigint
  /** Always above zero. */
  readonly d: bigint
}

export const ratio = (n: bigint | number, d: bigint | number = 1): Ratio => reduced(BigInt(n), BigInt(d))

/** "12.50", ".5", "4.12e+02": digits with a decimal point and an optional power of ten. */
export function fromDecimal(text: string): Ratio {
  const [mantissa = '', exponent = '0'] = text.toLowerCase().split('e')
  const [whole = '', part = ''] = mantissa.split('.')
  const power = Number(exponent) - part.length
  const digits = BigInt(whole + part || '0')
  return power >= 0 ? ratio(digits * 10n ** BigInt(power)) : ratio(digits, 10n ** BigInt(-power))
}

export const times = (a: Ratio, b: Ratio): Ratio => reduced(a.n * b.n, a.d * b.d)
export const over = (a: Ratio, b: Ratio): Ratio => (b.n < 0n ? reduced(-a.n * b.d, -a.d * b.n) : reduced(a.n * b.d, a.d * b.n))
export const plus = (a: Ratio, b: Ratio): Ratio => reduced(a.n * b.d + b.n * a.d, a.d * b.d)
export const negative = (a: Ratio): Ratio => ({ n: -a.n, d: a.d })
export const isBelow = (a: Ratio, b: Ratio): boolean => a.n * b.d < b.n * a.d

/** To the nearest whole number, half away from zero. */
export function roundHalfAway({ n, d }: Ratio): bigint {
  const size = n < 0n ? -n : n
  const whole = (2n * size + d) / (2n * d)
  return n < 0n ? -whole : whole
}

/**
 * The nearest double. Two whole numbers that a double holds divide to it in one rounding; of larger ones 24 significant digits are
 * handed to the language's own decimal reading.
 */
export function toNumber({ n, d }: Ratio): number {
  const size = n < 0n ? -n : n
  if (size < largest && d < largest) return Number(n) / Number(d)
  const places = Math.max(0, 24 - (String(size).length - String(d).length))
  const near = Number(`${(size * 10n ** BigInt(places)) / d}e-${places}`)
  return n < 0n ? -near : near
}

/** 2^53: below it every whole number is a double. */
const largest = 9_007_199_254_740_992n

function reduced(n: bigint, d: bigint): Ratio {
  if (d === 0n) throw new Error('a fraction over nothing')
  if (d === 1n) return { n, d }
  const common = greatest(n < 0n ? -n : n, d)
  return { n: n / common, d: d / common }
}

function greatest(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b]
  return a === 0n ? 1n : a
}
