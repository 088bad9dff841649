/**
 * A factor learned from the walker's own records: a published default drawn towards what was measured, the more records the closer.
 *   ln f = (P0·ln f0 + Pd·mean(ln xi))/(P0 + Pd)      P0 = 1/σ0², Pd = n/s², sd of ln f = (P0 + Pd)^−½
 *   f0 the default, σ0 how far off it may be, xi > 0 what each record says, s the scatter of one record (both standard deviations of the logarithm)
 * Source: the conjugate update of a normal mean with known scatter, standard statistics (memory).
 */
export interface LearnedFactor {
  readonly factor: number
  /** Standard deviation of its logarithm: about the relative standard uncertainty. */
  readonly sdLn: number
  readonly records: number
}

export function learnedFactor(
  prior: { readonly factor: number; readonly sdLn: number },
  scatterLn: number,
  records: readonly number[],
): LearnedFactor {
  const usable = records.filter((record) => Number.isFinite(record) && record > 0)
  const priorWeight = 1 / prior.sdLn ** 2
  const recordWeight = usable.length / scatterLn ** 2
  const sumLn = usable.reduce((sum, record) => sum + Math.log(record), 0)
  const ln = (priorWeight * Math.log(prior.factor) + sumLn / scatterLn ** 2) / (priorWeight + recordWeight)
  return { factor: Math.exp(ln), sdLn: (priorWeight + recordWeight) ** -0.5, records: usable.length }
}
