/**
 * Water on its boiling line: the temperature at which it boils under a pressure, and the pressure of its vapour at a temperature.
 *   Ts = (n10 + D − √((n10 + D)² − 4·(n9 + n10·D)))/2                0.000611213 ≤ P ≤ 22.064 MPa
 *     β = P^¼,  E = β² + n3·β + n6,  F = n1·β² + n4·β + n7,  G = n2·β² + n5·β + n8,  D = 2G/(−F − √(F² − 4EG))
 *   Ps = (2C/(−B + √(B² − 4AC)))⁴                                     273.15 ≤ T ≤ 647.096 K
 *     θ = T + n9/(T − n10),  A = θ² + n1·θ + n2,  B = n3·θ² + n4·θ + n5,  C = n6·θ² + n7·θ + n8
 * Source: IAPWS R7-97 (IF97), region 4, equations 30 and 31 (read in an open implementation). Agreement: the release's own test values to all digits printed.
 */
const [N1, N2, N3, N4, N5] = [0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7] as const
const [N6, N7, N8, N9, N10] = [0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3] as const

/** Boiling temperature, K, at `pressureMPa`; NaN outside the range of the formula. */
export function saturationTempK(pressureMPa: number): number {
  if (!(pressureMPa >= 0.000611212 && pressureMPa <= 22.064)) return Number.NaN
  const beta = pressureMPa ** 0.25
  const e = beta * beta + N3 * beta + N6
  const f = N1 * beta * beta + N4 * beta + N7
  const g = N2 * beta * beta + N5 * beta + N8
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g))
  return (N10 + d - Math.sqrt((N10 + d) ** 2 - 4 * (N9 + N10 * d))) / 2
}

/** Pressure of saturated vapour, MPa, at `tempK`; NaN outside the range of the formula. */
export function saturationPressureMPa(tempK: number): number {
  if (!(tempK >= 273.15 && tempK <= 647.096)) return Number.NaN
  const theta = tempK + N9 / (tempK - N10)
  const a = theta * theta + N1 * theta + N2
  const b = N3 * theta * theta + N4 * theta + N5
  const c = N6 * theta * theta + N7 * theta + N8
  return ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4
}
