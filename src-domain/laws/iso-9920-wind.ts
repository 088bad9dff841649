/**
 * What wind and walking leave of the whole insulation of clothing and air, by ISO 9920: a second opinion beside ISO 11079's own K.
 *   clothed: exp(−0.281·(vr − 0.15) + 0.044·(vr − 0.15)² − 0.492·vw + 0.176·vw²)
 *   nude:    exp(−0.533·(vr − 0.15) + 0.069·(vr − 0.15)² − 0.462·vw + 0.201·vw²)
 * vr air over the person 0.15 … 3.5 m/s; vw walking 0 … 1.2 m/s; clothing of 0.6 … 1.4 clo. Outside: `clothing.wind-range`.
 * Source: ISO 9920 in a public program library (read). Not used by the checks.
 */
import { outside, within, type Ranged } from './ranged.ts'

const clothed = [-0.281, 0.044, -0.492, 0.176] as const
const bare = [-0.533, 0.069, -0.462, 0.201] as const

export function windAndWalkFactor(windMs: number, walkMs: number, who: 'clothed' | 'nude' = 'clothed'): Ranged {
  if (!(windMs >= 0.15 && windMs <= 3.5 && walkMs >= 0 && walkMs <= 1.2)) return outside('clothing.wind-range', { windMs, walkMs })
  const [a, b, c, d] = who === 'clothed' ? clothed : bare
  const over = windMs - 0.15
  return within(Math.exp(a * over + b * over * over + c * walkMs + d * walkMs * walkMs))
}
