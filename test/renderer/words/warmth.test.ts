import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { warmthSentences } from '../../../src-renderer/words/warmth.ts'

const files = [
  'bed',
  'clothes',
  'cold-air',
  'covers',
  'sleep-warmth',
  'ground-warmth',
  'camp-warmth',
  'stop-warmth',
  'rain-cover',
  'leg-cover',
  'dry-store',
]
const text = files.map((file) => readFileSync(resolve(import.meta.dirname, '../../../src-domain/checks', `${file}.ts`), 'utf8')).join('\n')
const codes = [...text.matchAll(/(?:unknown|notAsked|missing)\('([a-z-]+)'|code: '([a-z-]+)'/g)].map((found) => found[1] ?? found[2]!)

test('every code the warmth and cover checks say has its sentence', () => {
  expect(codes.length).toBeGreaterThan(15)
  expect([...new Set(codes)].filter((code) => code !== 'nights' && !Object.hasOwn(warmthSentences, code))).toEqual([])
})
test('mats are said as R', () => {
  // R 4.83 is the test mat of 0.85 m²K/W (warmth.md 1.1).
  expect(warmthSentences['ground-mats']!({ haveRsi: 0.85, needRsi: 0.3, enoughRsi: 0.5 })).toBe('need R 1.7, have R 4.8; enough from 2.8')
})
