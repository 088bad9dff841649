import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { fuel } from '../../../src-domain/checks/fuel.ts'
import { packLoad } from '../../../src-domain/checks/pack-load.ts'
import { sayingWords, secondLine } from '../../../src-renderer/words/checks.ts'
import { asideSentences, provisionSentences } from '../../../src-renderer/words/provisions.ts'
import { find, foundBy } from '../../domain/checks/asking.ts'

const files = [
  'water-needs',
  'water-carry',
  'water-treatment',
  'fuel',
  'gas-cold',
  'stove-kit',
  'light',
  'power',
  'room',
  'pack-load',
  'rules',
]
const text = files.map((file) => readFileSync(resolve(import.meta.dirname, '../../../src-domain/checks', `${file}.ts`), 'utf8')).join('\n')
const codes = [...text.matchAll(/(?:unknown|notAsked)\('([a-z-]+)'|(?:code|missing): '([a-z-]+)'/g)].map((found) => found[1] ?? found[2]!)

describe('words of water, fuel, light, power and carry', () => {
  test('every code these checks say has its sentence', () => {
    expect(codes.length).toBeGreaterThan(25)
    const without = [...new Set(codes)].filter(
      (code) => !Object.hasOwn(asideSentences, code) && sayingWords({ code, facts: { name: 'x', boils: 1 } }) === code.replaceAll('-', ' '),
    )
    expect(without).toEqual([])
  })
  test('every rule a kit can break has its sentence, with and without a name', () => {
    for (const rule of ['valve-only', 'no-flame', 'no-wood', 'no-alcohol', 'hard-canister', 'by-air'])
      expect(provisionSentences[`rule-${rule}`]?.({ name: 'Stove' })).toContain('Stove')
    expect(provisionSentences['rule-hard-canister']!({ name: '' })).toBe('no hard food canister goes along')
  })
  test('need and have stay in sight beside what is said further', () => {
    const pack = { name: 'Pack', area: 'carry', g: 800, duties: 'pack', traits: { 'comfortable-load': 10 } } as const
    expect(secondLine(foundBy(packLoad, { items: [pack] }))).toMatch(/^need .*, have /)
    expect(secondLine(find(fuel, {}))).toBe('say how many boils a day')
  })
  test('a stretch is told by its places, hours and dry camps', () => {
    const said = asideSentences['dry-stretch']!({ fromM: 4000, toM: 18_000, hours: 3.5, dryCamps: 1 }).replaceAll('\u00a0', ' ')
    expect(said).toContain('3 h 30')
    expect(said).toContain('a dry camp')
  })
})
