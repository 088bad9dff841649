/**
 * Free fall at a place, and how far a scale adjusted elsewhere reads off: a strain-gauge scale weighs force, not mass.
 *   g(φ, h) = 9.780327·(1 + 0.0053024·sin²φ − 0.0000058·sin²2φ) − 3.086e−6·h      m/s²; φ latitude in degrees, h metres
 * Range: −90 to 90°, heights people walk at. Source: gravity formula of 1980 (memory; provisions.md 9.1).
 * A check mass at the place of weighing removes the error, so no correction is made here: the note only says how large it may be.
 */
export function gravityAt(latitudeDeg: number, heightM = 0): number {
  const phi = (latitudeDeg * Math.PI) / 180
  return 9.780327 * (1 + 0.0053024 * Math.sin(phi) ** 2 - 0.0000058 * Math.sin(2 * phi) ** 2) - 3.086e-6 * heightM
}

/** Share by which a scale adjusted at one place misreads at another: −0.00254 reads a quarter of a percent light. */
export function gravityError(
  adjusted: { readonly latitudeDeg: number; readonly heightM?: number },
  used: { readonly latitudeDeg: number; readonly heightM?: number },
): number {
  return gravityAt(used.latitudeDeg, used.heightM) / gravityAt(adjusted.latitudeDeg, adjusted.heightM) - 1
}
