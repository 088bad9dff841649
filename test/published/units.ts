import { convert } from '../../src-domain/figures/units.ts'
import type { Unit } from '../../src-domain/figures/units.ts'
import type { Published } from './published.ts'

const nist = 'NIST Handbook 44, appendix C, and NIST SP 811, appendix B: definitions marked exact'
/** Exact by definition: the tolerance is one part in 10^15, a double's own. */
const exact = (about: string, from: Unit, to: Unit, expected: number, source = nist, known: Published['known'] = 'memory'): Published => ({
  law: 'units',
  about,
  source,
  known,
  expected,
  tolerance: Math.abs(expected) * 1e-15,
  unit: to,
  got: () => convert(1, from, to),
})
/** Printed to a number of digits: half of the last one. */
const printed = (about: string, from: Unit, to: Unit, expected: number, tolerance: number, value = 1): Published => ({
  law: 'units',
  about,
  source: 'printed rounding in NIST Handbook 44, appendix C (provisions.md 9.4)',
  known: 'read',
  expected,
  tolerance,
  unit: to,
  got: () => convert(value, from, to),
})

export const rows: readonly Published[] = [
  exact('avoirdupois pound', 'lb', 'g', 453.59237),
  exact('ounce = lb/16', 'oz', 'g', 28.349523125),
  exact('grain = lb/7000', 'grain', 'mg', 64.79891),
  exact('troy ounce', 'ozt', 'g', 31.1034768),
  exact('pennyweight', 'dwt', 'g', 1.55517384),
  exact('short ton', 'short-ton', 'kg', 907.18474),
  exact('metric carat', 'ct', 'g', 0.2),
  exact('stone = 14 lb', 'st', 'kg', 6.35029318),
  exact('foot', 'ft', 'm', 0.3048),
  exact('inch', 'in', 'mm', 25.4),
  exact('mile', 'mi', 'm', 1609.344),
  exact('cubic inch', 'in3', 'ml', 16.387064),
  exact('US gallon = 231 in³', 'gal', 'ml', 3785.411784),
  exact('US quart', 'qt', 'ml', 946.352946),
  exact('US fluid ounce', 'floz', 'ml', 29.5735295625),
  exact('thermochemical kilocalorie', 'kcal', 'kJ', 4.184),
  exact('Btu (IT)', 'Btu', 'J', 1055.05585262),
  exact('watt hour', 'Wh', 'J', 3600),
  exact('mile per hour', 'mph', 'm/s', 0.44704),
  printed('pound, printed', 'lb', 'g', 453.592, 0.0005),
  printed('ounce, printed', 'oz', 'g', 28.35, 0.0005),
  printed('fluid ounce, printed', 'floz', 'ml', 29.574, 0.0005),
  printed('gallon, printed', 'gal', 'l', 3.785, 0.0005),
  // NIST SP 811, appendix B.8: °F·h·ft²/Btu(IT) = 1.761 102 E−01 m²·K/W; half of its last digit.
  { law: 'units', about: '1 ft²·°F·h/Btu', source: 'NIST SP 811, appendix B.8: 1.761 102 E−01', known: 'memory', expected: 0.1761102, tolerance: 5e-8, unit: 'm2K/W', got: () => convert(1, 'R', 'm2K/W') },
  { law: 'units', about: '−40 is the same in both', source: '°F = 1.8 °C + 32', known: 'recomputed', expected: -40, tolerance: 1e-13, unit: 'degF', got: () => convert(-40, 'degC', 'degF') },
  { law: 'units', about: 'water boils', source: '°F = 1.8 °C + 32', known: 'recomputed', expected: 212, tolerance: 1e-13, unit: 'degF', got: () => convert(100, 'degC', 'degF') },
  { law: 'units', about: 'a difference gains no 32', source: 'NIST SP 811, 8.5: an interval of 1 K is an interval of 1.8 °F', known: 'memory', expected: 1.8, tolerance: 1e-15, unit: 'degF-step', got: () => convert(1, 'K', 'degF-step') },
] // prettier-ignore
