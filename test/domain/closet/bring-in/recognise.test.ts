import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Choices } from '../../../../src-domain/closet/bring-in/choices.ts'
import { roles } from '../../../../src-domain/closet/bring-in/choices.ts'
import type { KnownItem } from '../../../../src-domain/closet/bring-in/preview.ts'
import { isTaken } from '../../../../src-domain/closet/bring-in/preview.ts'
import { recognise } from '../../../../src-domain/closet/bring-in/recognise.ts'
import { kitAreas, lanes } from '../../../../src-domain/closet/vocabulary.ts'
import { cellsOf, fixtureText, massesOf, ozMg, previewOf, previewOfText, rolesOf, rowNamed } from './sheets.ts'

test('pounds and ounces in two columns are one mass, section rows the area of the rows below', async () => {
  const preview = await previewOf('pounds-ounces-sections.csv')
  expect(rolesOf(preview)).toEqual(['item', 'pieces', 'pounds', 'ounces', 'note'])
  expect(massesOf(preview)).toMatchObject({ 'Single-skin tent': ozMg(16 + 2.1), Groundsheet: ozMg(3.5), 'Trail shoes': ozMg(16 + 3.3) })
  expect(rowNamed(preview, 'Single-skin tent')).toMatchObject({ area: 'shelter', areaWord: 'SHELTER', note: 'seam sealed' })
  expect(rowNamed(preview, 'Long spoon').area).toBe('kitchen')
  expect(preview.rows.filter((row) => row.leftOut?.code === 'area').map((row) => row.row + 1)).toEqual([4, 9, 13, 17, 23])
})

test('a section named by a lane sends its rows there', async () => {
  const preview = await previewOf('pounds-ounces-sections.csv')
  expect(preview.asLoadout).toBe(true)
  expect(preview.lines.filter((line) => line.lane === 'on_me').map((line) => [line.name, line.pieces])).toEqual([['Trail shoes', 1], ['Sun shirt', 1], ['Trekking poles', 2]]) // prettier-ignore
})

test('a name never holds the count: the cell is the mass of all of them', async () => {
  const stakes = rowNamed(await previewOf('mixed-per-cell.csv'), 'Stakes')
  expect(stakes).toMatchObject({ pieces: 8, masses: [{ piece_mg: 10_500, origin: 'measured' }] })
  expect(stakes.notes.map((note) => note.code)).toEqual(['count-from-name', 'mass-of-all-pieces'])
})

// The readings of the sheet in look/first.html, whole grams there; here to the milligram by NIST SP 811.
test('units stand in each cell, bare numbers are grams for their range, marks say claims and estimates', async () => {
  const preview = await previewOf('mixed-per-cell.csv')
  const [mass] = preview.blocks[0]!.columns.filter((column) => column.role === 'mass')
  expect(mass).toMatchObject({
    unit: 'g',
    unitsInCells: true,
    unitBecause: { code: 'by-range', facts: { inside: 7, of: 7, low: 20, high: 1400 } },
  })
  expect(massesOf(preview)).toMatchObject({
    'Single-skin shelter, pole-pitched': ozMg(18.1),
    'Down quilt 0C': ozMg(21.8),
    'Rain jacket': 214_000,
    'Power bank': ozMg(6.25),
    'Trail shoes': ozMg(19.3),
    'Pot 750': null,
  })
  expect(rowNamed(preview, 'Inflatable mat').masses).toEqual([{ piece_mg: 352_000, origin: 'claimed' }])
  expect(rowNamed(preview, 'Wash bag').masses).toEqual([{ piece_mg: 95_000, origin: 'estimated' }])
  expect(rowNamed(preview, 'Headlamp').masses).toEqual([{ piece_mg: 56_000, origin: 'measured' }])
  expect(rowNamed(preview, 'Pot 750').notes.map((note) => note.code)).toEqual(['mass-missing'])
})

test('what cannot be read waits with its problem named', async () => {
  const preview = await previewOf('mixed-per-cell.csv')
  const wind = rowNamed(preview, 'Wind shirt')
  expect(wind).toMatchObject({
    fate: 'problem',
    problem: { code: 'mass-ambiguous' },
    readings: [
      { text: '3.2 oz', mg: ozMg(3.2) },
      { text: '32 oz', mg: ozMg(32) },
    ],
  })
  expect(rowNamed(preview, 'Phone').problem).toEqual({ code: 'mass-below-zero', facts: { text: '-194' } })
  expect(preview.counts).toMatchObject({ problems: 2, leftOut: 3, rowsNew: 19 })
})

test('the person settles a doubtful row, leaves one out, puts one back', async () => {
  const rows = { '0:6': { mass: '3.2 oz' }, '0:13': { take: false }, '0:10': { take: true, name: 'Old sum', mass: '4310 g' } }
  const preview = await previewOf('mixed-per-cell.csv', { rows })
  expect(rowNamed(preview, 'Wind shirt')).toMatchObject({ fate: 'new', masses: [{ piece_mg: ozMg(3.2) }] })
  expect(preview.rows[13]).toMatchObject({ fate: 'left_out', leftOut: { code: 'by-choice' } })
  expect(rowNamed(preview, 'Old sum')).toMatchObject({ fate: 'new', masses: [{ piece_mg: 4_310_000 }] })
})

test('words of the sheet are matched to areas, too wide ones by each name, all changeable', async () => {
  const preview = await previewOf('mixed-per-cell.csv')
  const words = Object.fromEntries(preview.words.map((word) => [word.word, [word.area, word.rows]]))
  expect(words).toMatchObject({
    cook: ['kitchen', 2],
    electronics: ['light_power', 3],
    packs: ['carry', 1],
    clothes: ['clothing', 4],
    misc: ['by_name', 3],
  })
  expect(rowNamed(preview, 'First aid')).toMatchObject({ area: 'care', areaFrom: 'name' })
  const changed = await previewOf('mixed-per-cell.csv', { words: { misc: 'extras' } })
  expect(rowNamed(changed, 'First aid')).toMatchObject({ area: 'extras', areaFrom: 'word' })
})

test('decimal commas are read as such where the whole sheet has them; states and prices with their currency', async () => {
  const preview = await previewOf('semicolon-decimal-comma.csv')
  expect(massesOf(preview)).toMatchObject({ 'Tunnel tent': 1_420_000, 'Gas stove': 83_000, 'Head torch': 88_000 })
  expect(rowNamed(preview, 'Winter bag').price).toEqual({ amountMinor: 42_050, currency: 'EUR' })
  expect(['Down jacket', 'Gas stove', 'Kettle', 'Air mat'].map((name) => rowNamed(preview, name).status)).toEqual([
    'wished',
    'sold',
    'lent',
    'owned',
  ])
})

test('blocks side by side are taken one by one, each with the area above it', async () => {
  const preview = await previewOf('blocks-side-by-side.csv')
  expect(preview.blocks.map(({ left, right, heading }) => [left, right, heading])).toEqual([[0, 2, 1], [3, 5, 1], [6, 8, 1]]) // prettier-ignore
  expect(massesOf(preview)).toMatchObject({ Tarp: ozMg(9.45), Quilt: ozMg(21.8), Windscreen: ozMg(1.1) })
  expect(['Tarp', 'Mat', 'Spoon'].map((name) => rowNamed(preview, name).area)).toEqual(['shelter', 'sleep', 'kitchen'])
  const without = await previewOf('blocks-side-by-side.csv', { blocksLeftOut: [1] })
  expect(without.rows.filter((row) => row.block === 1).every((row) => row.leftOut?.code === 'block-left-out')).toBe(true)
  expect(without.counts.rowsNew).toBe(8)
})

test('a mark column goes to the lanes by value, what is marked home to none', async () => {
  const preview = await previewOf('mark-column.csv')
  expect(preview.marks.map(({ value, lane, rows }) => [value, lane, rows])).toEqual([['worn', 'on_me', 4], ['packed', 'in_pack', 6], ['consumable', 'used_up', 3], ['home', 'home', 1]]) // prettier-ignore
  expect(preview.lines.filter((line) => line.name === 'Merino socks').map(({ lane, pieces }) => [lane, pieces])).toEqual([['on_me', 1], ['in_pack', 1]]) // prettier-ignore
  expect(rowNamed(preview, 'Camp chair')).toMatchObject({ fate: 'new', lane: null })
  const changed = await previewOf('mark-column.csv', { marks: { '4:home': 'in_pack' } })
  expect(rowNamed(changed, 'Camp chair').lane).toBe('in_pack')
})

test('ticks under "worn" and "consumable" are marks; the same mass in a second unit is read once', async () => {
  const preview = await previewOf('flags-and-summary.csv')
  expect(rolesOf(preview)).toEqual(['area', 'item', 'note', 'ignored', 'mass', 'pieces', 'mark', 'mark'])
  expect(preview.blocks[0]!.columns[3]!.because).toEqual({ code: 'same-as-column', facts: { column: 4, heading: 'g' } })
  expect(['Sun shirt', 'Gas', 'Tarp'].map((name) => rowNamed(preview, name).lane)).toEqual(['on_me', 'used_up', 'in_pack'])
  expect(rowNamed(preview, 'Stakes')).toMatchObject({
    areaWord: 'Tent and sleep',
    area: 'shelter',
    pieces: 8,
    masses: [{ piece_mg: 10_500 }],
  })
})

test('claimed and measured columns are kept beside each other; a tick under "wish" is wished for', async () => {
  const preview = await previewOf('claimed-and-measured.csv')
  expect(rowNamed(preview, 'Ridge tent').masses).toEqual([{ piece_mg: 1_297_000, origin: 'measured' }, { piece_mg: 1_250_000, origin: 'claimed' }]) // prettier-ignore
  expect(rowNamed(preview, 'Snow stakes').masses).toEqual([{ piece_mg: 150_000, origin: 'claimed' }])
  expect(rowNamed(preview, 'Down jacket')).toMatchObject({ status: 'wished', maker: 'Quiltery Lane', tags: ['winter'] })
  expect(rowNamed(preview, 'Overquilt').tags).toEqual(['winter', 'shoulder'])
})

test('totals, row numbers and a column of line masses are told from things', async () => {
  const preview = await previewOf('totals-rows.csv')
  expect(rolesOf(preview)).toEqual(['ignored', 'item', 'pieces', 'mass', 'line_mass', 'ignored'].slice(0, rolesOf(preview).length))
  expect(preview.rows.filter((row) => row.leftOut?.code === 'total').map((row) => row.leftOut?.facts['label'])).toEqual(['Subtotal', 'Subtotal', 'Subtotal', 'Grand total']) // prettier-ignore
  expect(massesOf(preview)).toMatchObject({ 'Flat tarp': 268_000, Stakes: 10_500, 'Fuel bottle': 31_000 })
})

test('a sheet without headings is known by its cells', async () => {
  const preview = await previewOf('no-headings.csv')
  expect(preview.blocks[0]!.heading).toBeNull()
  expect(rolesOf(preview)).toEqual(['item', 'area', 'mass'])
  expect(rolesOf(await previewOf('no-heading-pounds-ounces.csv'))).toEqual(['item', 'pounds', 'ounces'])
  expect(massesOf(await previewOf('no-heading-pounds-ounces.csv'))).toMatchObject({ 'Tunnel tent': ozMg(50), 'Down jacket': ozMg(13.6) })
})

test('a column of units beside the figures is read with them', async () => {
  const preview = await previewOf('unit-column.csv')
  expect(rolesOf(preview)).toEqual(['item', 'area', 'mass', 'unit', 'pieces', 'mark', 'mark'])
  // 1.36 lb = 616.886 g, 9.45 oz = 267.903 g (NIST SP 811)
  expect(massesOf(preview)).toEqual({
    Tarp: 267_903,
    Stakes: 10_500,
    Quilt: 616_886,
    'Foam mat': 183_000,
    'Trail shoes': 547_000,
    Gas: 110_000,
  })
  expect(['Tarp', 'Trail shoes', 'Gas'].map((name) => rowNamed(preview, name).lane)).toEqual(['in_pack', 'on_me', 'used_up'])
})

test('masses below "base", "worn" and "consumables" go to those lanes, each column with its own sum', async () => {
  const preview = await previewOf('lane-columns.csv')
  expect(preview.asLoadout).toBe(true)
  expect(['Tarp', 'Trail shoes', 'Gas'].map((name) => rowNamed(preview, name).lane)).toEqual(['in_pack', 'on_me', 'used_up'])
  // 268+618+183+436, 547+176, 435+110
  expect(preview.totals.map(({ of, ours_mg, agrees }) => [of, ours_mg, agrees])).toEqual([
    ['in_pack', 1_505_000, true],
    ['on_me', 723_000, true],
    ['used_up', 545_000, true],
  ])
})

test('a plain list may hold the mass at the end of each name', async () => {
  const preview = await previewOf('plain-list.txt')
  expect(massesOf(preview)).toEqual({ Tarp: 268_000, Stakes: 10_500, Quilt: ozMg(21.8), 'Foam mat': 183_000, Tent: ozMg(35), Spoon: null })
  expect(rowNamed(preview, 'Stakes').pieces).toBe(8)
})

interface Truth {
  readonly row: number
  readonly name: string
  readonly area: string
  readonly pieces: number
  readonly piece_mg: number | null
  readonly origin: string
  readonly lane: string | null
}
test('200 messy rows are read to the milligram as the script that wrote them meant', async () => {
  const truth = JSON.parse(fixtureText('messy-200.truth.json')) as readonly Truth[]
  const preview = await previewOf('messy-200.csv')
  expect(truth.length).toBe(200)
  const read = truth.map(({ row }) => {
    const { name, area, pieces, masses, lane } = preview.rows[row]!
    return { row, name, area, pieces, piece_mg: masses[0]?.piece_mg ?? null, origin: masses[0]?.origin ?? 'none', lane }
  })
  expect(read).toEqual(truth)
  expect(preview.counts).toMatchObject({ rowsNew: 200, problems: 0, leftOut: preview.rows.length - 200 })
  expect(preview.totals.map((total) => total.agrees)).toEqual([true, true, true])
})

const known = (id: number, name: string, mass_mg: number | null, maker = ''): KnownItem => ({ id, name, maker, pieces: 1, mass_mg })

test.each([
  [
    'the same name in part and the same mass',
    known(7, 'Down quilt, 0 °C comfort', 618_000),
    'Down quilt 0C,618',
    'known',
    'name-in-part-and-mass',
  ],
  ['the same name and mass', known(7, 'Tarps', 268_000), 'Tarp,268', 'known', 'same-name-and-mass'],
  ['the same name, weighed a little otherwise', known(7, 'Rain jacket', 214_000), 'Rain jacket,221', 'known', 'same-name-other-mass'],
  ['initials', known(7, 'First aid kit', 126_000), 'FAK,126', 'known', 'same-name-and-mass'],
  ['the same name without a mass', known(7, 'Rain jacket', null), 'Rain jacket,221', 'known', 'same-name'],
  ['the same name, far from its mass', known(7, 'Socks', 60_000), 'Socks,95', 'new', 'same-name-other-mass'],
  ['another size', known(7, 'Pot 900', 95_000), 'Pot 750,95', 'new', undefined],
  ['one common word and the same mass', known(7, 'Down jacket', 300_000), 'Down quilt for two,300', 'new', undefined],
])('against the closet: %s', async (_, item, line, fate, why) => {
  const preview = await previewOfText(`Item,g\nFlat hat,81\n${line}`, {}, [known(1, 'Something else', 5), item])
  expect(preview.rows[2]).toMatchObject({ fate, match: why === undefined ? null : { of: 'closet', id: 7, why: { code: why } } })
})

test('"another one" and "the same thing" are the person\'s to say', async () => {
  const closet = [known(7, 'Tarp', 268_000), known(8, 'Socks', 60_000)]
  const text = 'Item,g\nTarp,268\nSocks,95'
  const preview = await previewOfText(text, { rows: { '0:1': { same: 'another' }, '0:2': { same: 'same' } } }, closet)
  expect(preview.rows.map((row) => row.fate)).toEqual(['left_out', 'new', 'known'])
})

test('the same thing twice in the sheet is two pieces of one; with another mass it is another thing', async () => {
  const preview = await previewOfText('Item,g\nSocks,62\nsock,62\nSocks,95')
  expect(preview.rows.map((row) => row.fate)).toEqual(['left_out', 'new', 'again', 'new'])
  expect(preview.rows[2]!.match).toMatchObject({ of: 'sheet', row: '0:1' })
})

test('masses of which nothing is said are claims until the person says otherwise', async () => {
  const text = 'Item,g\nTarp,268\nPot,95'
  const preview = await previewOfText(text)
  expect(preview.blocks[0]!.columns[1]).toMatchObject({ massFrom: 'claimed', massFromBecause: { code: 'by-default' } })
  const changed = await previewOfText(text, { massFrom: { 1: 'measured' } })
  expect(changed.rows[1]!.masses).toEqual([{ piece_mg: 268_000, origin: 'measured' }])
})

test.each([
  ['grams', [84, 56, 322, 183, 214], 'g'],
  ['ounces', [2.6, 9.45, 14.5, 21.8, 3.2], 'oz'],
  ['kilograms', [0.412, 1.2, 0.085, 0.618], 'kg'],
] as const)('bare numbers are %s by their range', async (_, values, unit) => {
  const preview = await previewOfText(
    `Thing,Weight\n${values.map((value, at) => `Thing ${String.fromCharCode(65 + at)},${value}`).join('\n')}`,
  )
  expect(preview.blocks[0]!.columns[1]).toMatchObject({ unit, unitBecause: { code: 'by-range' } })
  const changed = await previewOfText(`Thing,Weight\nA,${values[0]}`, { units: { 1: 'lb' } })
  expect(changed.blocks[0]!.columns[1]).toMatchObject({ unit: 'lb', unitBecause: { code: 'by-person' } })
})

test("a column role is the person's to change, a role that stands once moves", async () => {
  const text = 'Item,Description,g\nTarp,Flat tarp 3x3,268\nPot,Small pot,95'
  expect(rolesOf(await previewOfText(text))).toEqual(['item', 'note', 'mass'])
  const changed = await previewOfText(text, { roles: { 1: 'item', 0: 'ignored' } })
  expect(rolesOf(changed)).toEqual(['ignored', 'item', 'mass'])
  expect(changed.rows[1]!.name).toBe('Flat tarp 3x3')
})

const cell = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom('', '', 'Tarp', 'Stakes (8)', 'Quilt', 'Shelter', 'SLEEP', 'Total', 'Base weight', 'Worn', '268', '9.45', '3,2', '1 lb 3 oz', '412 g', '-194', '€12', 'x', 'worn', 'Item', 'Weight', 'oz', 'lb', 'Qty', 'Category', 'Note', '1', '2', '0', '-', '0,5', '1.234,5', 'https://example.org') },
  { weight: 1, arbitrary: fc.string({ maxLength: 12 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 6 }) },
  { weight: 1, arbitrary: fc.constantFrom('constructor', '__proto__', 'toString', '=1+1', "'=1", '9'.repeat(400), 'a'.repeat(400)) },
) // prettier-ignore
const matrix = fc.array(fc.array(cell, { maxLength: 9 }), { maxLength: 14 })
const key = fc.tuple(fc.nat(2), fc.nat(13)).map(([block, row]) => `${block}:${row}`)
const few = <T>(keys: fc.Arbitrary<string>, values: fc.Arbitrary<T>): fc.Arbitrary<Record<string, T>> =>
  fc.dictionary(keys, values, { maxKeys: 3 })
const choicesArbitrary: fc.Arbitrary<Choices> = fc.record(
  {
    roles: few(fc.nat(8).map(String), fc.constantFrom(...roles)),
    heading: few(fc.nat(2).map(String), fc.option(fc.nat(20), { nil: null })),
    units: few(fc.nat(8).map(String), fc.constantFrom('g', 'oz', 'lb', 'kg')),
    rows: few(
      key,
      fc.record({ take: fc.boolean(), mass: cell, same: fc.constantFrom('same', 'another'), name: cell }, { requiredKeys: [] }),
    ),
    massIs: fc.constantFrom('piece', 'line'),
    decimal: fc.constantFrom(',', '.'),
    oneBlock: fc.boolean(),
    asLoadout: fc.boolean(),
    words: few(cell, fc.constantFrom(...kitAreas, 'by_name')),
    currency: fc.constant('EUR'),
  },
  { requiredKeys: [] },
)
const closetArbitrary = fc.array(fc.record({ id: fc.integer({ min: 1, max: 9 }), name: cell, maker: cell, pieces: fc.constant(1), mass_mg: fc.option(fc.nat(2_000_000), { nil: null }) }), { maxLength: 5 }) // prettier-ignore

test('any cells, choices and closet give a preview in which each row is exactly one of taken, left out, problem', () => {
  fc.assert(
    fc.property(matrix, choicesArbitrary, closetArbitrary, (cells, choices, closet) => {
      const preview = recognise(cells, choices, closet)
      const { counts, rows, blocks } = preview
      expect(rows.length).toBe(blocks.length * cells.length)
      expect(new Set(rows.map((row) => row.key)).size).toBe(rows.length)
      expect(counts.rowsNew + counts.rowsAgain + counts.rowsKnown + counts.problems + counts.leftOut).toBe(rows.length)
      for (const row of rows) {
        expect([isTaken(row.fate), row.problem !== null, row.leftOut !== null].filter(Boolean).length).toBe(1)
        expect(
          (kitAreas as readonly string[]).includes(row.area) && (row.lane === null || (lanes as readonly string[]).includes(row.lane)),
        ).toBe(true)
        for (const { piece_mg } of row.masses) expect(Number.isSafeInteger(piece_mg) && piece_mg > 0).toBe(true)
        expect(Number.isSafeInteger(row.pieces) && row.pieces >= 1).toBe(true)
        if (isTaken(row.fate)) expect(row.name.trim()).not.toBe('')
      }
      expect(structuredClone(preview)).toEqual(preview) // plain data
    }),
    { numRuns: 600 },
  )
})

test('blocks share out the columns without gap or overlap of tables', () => {
  fc.assert(
    fc.property(matrix, (cells) => {
      const { blocks } = recognise(cells, {}, [])
      for (const [at, block] of blocks.entries()) if (at > 0) expect(block.left).toBeGreaterThanOrEqual(blocks[at - 1]!.right)
      const covered = new Set(blocks.flatMap(({ left, right }) => Array.from({ length: right - left }, (_, at) => left + at)))
      cells.forEach((row) =>
        row.forEach((text, column) => text.trim() === '' || /^[\p{Cc}\p{Cf}\s']*$/u.test(text) || expect(covered.has(column)).toBe(true)),
      )
    }),
  )
})

test('the same cells give the same preview, whatever the closet was asked before', async () => {
  const cells = await cellsOf(fixtureText('messy-200.csv'))
  expect(recognise(cells, {}, [])).toEqual(recognise(structuredClone(cells), {}, []))
})
