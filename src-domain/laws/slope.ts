/**
 * The three ways to write a slope, converted. They are never mixed: `gradeRatio` is rise over run, `gradePercent` a hundred times that,
 * `slopeDeg` its angle. Uphill is positive.
 *   percent = 100·ratio      degrees = atan(ratio)·180/π
 * Source: definitions, exact.
 */
export const percentOf = (gradeRatio: number): number => 100 * gradeRatio
export const degreesOf = (gradeRatio: number): number => (Math.atan(gradeRatio) * 180) / Math.PI
export const ratioOfDegrees = (slopeDeg: number): number => Math.tan((slopeDeg * Math.PI) / 180)
