/**
 * Reads the mix printed on a canister: names of gases with their shares of the mass, e.g. "isobutane 80 propane 20", "70 % butane, 30 % propane",
 * "80/20 isobutane/propane", "isobutane". The shares must add to 100 (or 1); one gas may be left without a share and takes the rest.
 * Anything else is null: a mix is never guessed.
 */
import type { Gas, GasMix } from './gas-pressure.ts'

const WORD = /(iso-?butane|i-butane)|(n-?butane|butane)|(propane)|(\d+(?:[.,]\d+)?)/gu

export function readGasMix(text: string): GasMix | null {
  const plain = text.toLowerCase()
  if (/[a-z]/u.test(plain.replace(WORD, ' ').replace(/\b(?:by|mass|and|mix|gas|of)\b/gu, ''))) return null
  const names: Gas[] = []
  const numbers: number[] = []
  for (const [, iso, normal, light, number] of plain.matchAll(WORD)) {
    if (number !== undefined) numbers.push(Number(number.replace(',', '.')))
    else names.push(iso !== undefined ? 'isobutane' : normal !== undefined ? 'butane' : light !== undefined ? 'propane' : 'butane')
  }
  return mixOf(names, numbers)
}

/** The mix as it is written back: by share, largest first. */
export function writeGasMix(mix: GasMix): string {
  const parts = (Object.entries(mix) as [Gas, number][]).filter(([, share]) => share > 0).sort((a, b) => b[1] - a[1])
  return parts.map(([gas, share]) => `${gas} ${Number((share * 100).toFixed(2))}`).join(' ')
}

function mixOf(names: readonly Gas[], numbers: readonly number[]): GasMix | null {
  if (names.length === 0 || new Set(names).size !== names.length) return null
  const sum = numbers.reduce((all, one) => all + one, 0)
  const full = sum <= 1.001 && numbers.length > 0 ? 1 : 100
  const shares = numbers.length === names.length - 1 ? [...numbers, full - sum] : numbers
  if (shares.length !== names.length || shares.some((share) => share < 0)) return null
  if (Math.abs(shares.reduce((all, one) => all + one, 0) - full) > full * 0.011) return null
  const total = shares.reduce((all, one) => all + one, 0)
  const of = (gas: Gas): number => (names.includes(gas) ? shares[names.indexOf(gas)]! / total : 0)
  return { propane: of('propane'), isobutane: of('isobutane'), butane: of('butane') }
}
