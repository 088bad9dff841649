import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cleanName } from '../../../../src-domain/closet/bring-in/clean-name.ts'

// Expected names and counts: how a person reads them (common practice, no source).
test.each([
  ['Stakes (8)', 'Stakes', 8],
  ['Stakes x8', 'Stakes', 8],
  ['Stakes × 8', 'Stakes', 8],
  ['8 x stakes', 'stakes', 8],
  ['8x Stakes', 'Stakes', 8],
  ['Stakes (x8)', 'Stakes', 8],
  ['Stakes (8x)', 'Stakes', 8],
  ['Stakes, 8 pcs', 'Stakes', 8],
  ['Stakes (8 pieces)', 'Stakes', 8],
  ['Set of 8 stakes', 'stakes', 8],
  ['6 tent stakes', 'tent stakes', 6],
  ['AA batteries (4)', 'AA batteries', 4],
  ['2 x stakes (8)', 'stakes', 16],
  ['Pot 750', 'Pot 750', null],
  ['Pack (50)', 'Pack (50)', null],
  ['Quilt (20)', 'Quilt (20)', null],
  ['2 person tents', '2 person tents', null],
  ['3 season bag', '3 season bag', null],
  ['Trail shoes (pair)', 'Trail shoes (pair)', null],
  ['Soft bottle 1L', 'Soft bottle 1L', null],
  ['(8)', '(8)', null],
  ['Gloves (large)', 'Gloves (large)', null],
  ['', '', null],
])('%s', (typed, name, pieces) => expect(cleanName(typed)).toEqual({ name, pieces }))

test('a cleaned name holds no count any more', () => {
  const part = fc.constantFrom('8', 'x', '×', '(8)', '(x3)', 'stakes', 'Pot', 'pcs', ', 4 pcs', '2 x', '12', 'set of 6', ' ')
  fc.assert(
    fc.property(
      fc.oneof(
        fc.array(part, { maxLength: 7 }).map((parts) => parts.join(' ')),
        fc.string({ unit: 'binary' }),
      ),
      (typed) => {
        const { name, pieces } = cleanName(typed)
        expect(cleanName(name).pieces).toBeNull()
        expect(pieces === null || (Number.isInteger(pieces) && pieces >= 1 && pieces <= 999)).toBe(true)
        expect(typed.includes(name)).toBe(true)
      },
    ),
    { numRuns: 1000 },
  )
})
