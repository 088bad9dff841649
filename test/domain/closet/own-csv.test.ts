import { createRequire } from 'node:module'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { OwnItem, OwnLine } from '../../../src-domain/closet/own-csv.ts'
import { closetHeader, gramsText, guarded, loadoutHeader, ownKind, readClosetCsv, readLoadoutCsv, unguarded, writeClosetCsv, writeLoadoutCsv } from '../../../src-domain/closet/own-csv.ts' // prettier-ignore
import { kitAreas, lanes, massOrigins, statuses } from '../../../src-domain/closet/vocabulary.ts'
import { readCells } from '../../../src-renderer/rooms/bring-in/cells.ts'

const naughty = createRequire(import.meta.url)('big-list-of-naughty-strings') as readonly string[]

const text = fc.oneof(
  fc.string({ maxLength: 12 }),
  fc.string({ unit: 'binary', maxLength: 8 }),
  fc.constantFrom(
    '=1+1',
    '+3',
    '-5',
    '@SUM(A1)',
    "'=x",
    "''=x",
    "'",
    '\t=1',
    '\r=1',
    ' =1',
    'a,b',
    'say "hi"',
    'two\nlines',
    'cr\rlf\r\n',
    '\uFEFF',
    '＝1',
    '',
    '  padded  ',
  ),
  fc.constantFrom(...naughty),
)
const mass = fc.option(fc.integer({ min: 0, max: 999_999_999 }), { nil: null })
const own = {
  kitArea: fc.constantFrom(...kitAreas),
  name: text,
  maker: text,
  pieces: fc.integer({ min: 1, max: 100_000 }),
  pieceMass_mg: mass,
  massFrom: fc.constantFrom(...massOrigins),
  band_mg: mass,
  duties: fc.uniqueArray(fc.constantFrom('shelter', 'stake', 'my-own-duty'), { maxLength: 3 }),
  set: text,
  note: text,
}
const line: fc.Arbitrary<OwnLine> = fc.record({ lane: fc.constantFrom(...lanes), ...own })
const item: fc.Arbitrary<OwnItem> = fc.record({
  status: fc.constantFrom(...statuses),
  lastWeighedOn: fc.constantFrom(null, '2025-10-08'),
  ...own,
})

async function cellsOf(csv: string): Promise<readonly (readonly string[])[]> {
  const read = await readCells(new TextEncoder().encode(csv))
  if (!read?.ok) throw new Error(JSON.stringify(read))
  return read.value.cells
}

/** Lone surrogates do not survive UTF-8; every other text does. */
const whole = (rows: readonly { name: string; maker: string; set: string; note: string }[]): boolean =>
  rows.every((row) => [row.name, row.maker, row.set, row.note].every((one) => one.isWellFormed()))

test('a loadout written and read again is the same', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(line, { maxLength: 12 }), async (lines) => {
      fc.pre(whole(lines))
      const cells = await cellsOf(writeLoadoutCsv(lines))
      expect(ownKind(cells)).toBe('loadout')
      expect(readLoadoutCsv(cells)).toEqual({ ok: true, value: lines })
    }),
    { numRuns: 400 },
  )
})

test('a closet written and read again is the same', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(item, { maxLength: 12 }), async (items) => {
      fc.pre(whole(items))
      const cells = await cellsOf(writeClosetCsv(items))
      expect(ownKind(cells)).toBe('closet')
      expect(readClosetCsv(cells)).toEqual({ ok: true, value: items })
    }),
    { numRuns: 400 },
  )
})

// DESIGN.md, CSV of ours: the headers as written there.
test('the headers are those of the design', () => {
  expect(loadoutHeader.join(',')).toBe('lane,kit_area,name,maker,pieces,piece_mass_g,mass_from,band_g,duties,set,note')
  expect(closetHeader.join(',')).toBe('status,last_weighed_on,kit_area,name,maker,pieces,piece_mass_g,mass_from,band_g,duties,set,note')
})

const stakes: OwnLine = { lane: 'in_pack', kitArea: 'shelter', name: '=HYPERLINK("x")', maker: '', pieces: 8, pieceMass_mg: 10_500, massFrom: 'measured', band_mg: null, duties: ['stake'], set: '', note: '' } // prettier-ignore

test('a name that is a formula is written as text, its numbers bare', () => {
  expect(writeLoadoutCsv([stakes]).split('\r\n')[1]).toBe(`in_pack,shelter,"'=HYPERLINK(""x"")",,8,10.5,measured,,stake,,`)
})

// Signs at which a spreadsheet starts a formula: OWASP, CSV Injection (memory): = + - @ tab carriage-return, line feed and the full-width forms.
test('no text begins a formula once guarded, and the guard comes off again', () => {
  fc.assert(
    fc.property(text, (one) => {
      expect(guarded(one)).not.toMatch(/^\s*[=+\-@\t\r\n＝＋－＠]/u)
      expect(unguarded(guarded(one))).toBe(one)
    }),
    { numRuns: 2000 },
  )
})

test.each([[0, '0'], [1, '0.001'], [10_500, '10.5'], [412_000, '412'], [1_000_000_000, '1000000'], [999_999_999, '999999.999']])('%s mg is written %s g', (mg, grams) => {
  expect(gramsText(mg)).toBe(grams)
}) // prettier-ignore

test.each([
  ['another header', [['name', 'mass']], 1],
  ['an unknown lane', [[...loadoutHeader], ['pocket', 'shelter', 'Tarp', '', '1', '268', 'measured', '', '', '', '']], 2],
  ['an unknown area', [[...loadoutHeader], ['in_pack', 'tents', 'Tarp', '', '1', '268', 'measured', '', '', '', '']], 2],
  ['no pieces', [[...loadoutHeader], ['in_pack', 'shelter', 'Tarp', '', '0', '268', 'measured', '', '', '', '']], 2],
  ['a mass with a unit', [[...loadoutHeader], ['in_pack', 'shelter', 'Tarp', '', '1', '268 g', 'measured', '', '', '', '']], 2],
  ['a row too short', [[...loadoutHeader], ['in_pack', 'shelter', 'Tarp']], 2],
])('%s is refused with its line', (_, cells, line) => {
  expect(readLoadoutCsv(cells)).toMatchObject({ ok: false, fault: { code: 'sheet.unreadable', facts: { line } } })
})

test('any cells give rows or a fault', () => {
  fc.assert(
    fc.property(fc.array(fc.array(text)), (cells) => {
      for (const header of [loadoutHeader, closetHeader]) {
        expect(typeof readLoadoutCsv([[...header], ...cells]).ok).toBe('boolean')
        expect(typeof readClosetCsv([[...header], ...cells]).ok).toBe('boolean')
      }
    }),
  )
})
