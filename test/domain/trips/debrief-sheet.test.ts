import fc from 'fast-check'
import { expect, test } from 'vitest'
import { daysTold, debriefSheet, nextUse } from '../../../src-domain/trips/debrief-sheet.ts'
import type { Use } from '../../../src-domain/trips/record.ts'

const line = (packedId: number | null, said: 'one' | 'rest') => ({ packedId, said, use: 'used' as const, verdict: '' as const })

test('every packed line stands in exactly one part, and what stayed at home among what is worth a word', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('one' as const, 'rest' as const, null), { maxLength: 30 }), fc.nat(3), (words, missed) => {
      const packed = words.map((_, id) => ({ id }))
      const lines = [
        ...words.flatMap((said, id) => (said === null ? [] : [line(id, said)])),
        ...Array.from({ length: missed }, () => line(null, 'one')),
      ]
      const { worth, rest, unsaid } = debriefSheet(packed, lines)
      const ids = [...worth.flatMap((one) => one.packed ?? []), ...rest.map((one) => one.packed), ...unsaid].map(({ id }) => id)
      expect(ids.toSorted((a, b) => a - b)).toEqual(packed.map(({ id }) => id))
      expect(worth.filter((one) => one.packed === null)).toHaveLength(missed)
      expect(unsaid).toHaveLength(words.filter((said) => said === null).length)
    }),
  )
})

test('U goes round the four words and never back to unknown', () => {
  const round: Use[] = ['unknown']
  for (let pressed = 0; pressed < 5; pressed++) round.push(nextUse(round.at(-1)!))
  expect(round).toEqual(['unknown', 'used', 'unused', 'missed', 'failed', 'used'])
})

test('days by dates, legs or nights, whichever says most; never none', () => {
  expect(daysTold({ days: 4, legs: [{ day: 2 }], nights: null })).toBe(4)
  expect(daysTold({ days: null, legs: [{ day: 1 }, { day: 3 }], nights: 1 })).toBe(3)
  expect(daysTold({ days: null, legs: [], nights: 2 })).toBe(3)
  expect(daysTold({ days: null, legs: [], nights: null })).toBe(1)
})
