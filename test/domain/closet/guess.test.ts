import fc from 'fast-check'
import { expect, test } from 'vitest'
import { guessArea } from '../../../src-domain/closet/guess-area.ts'
import { guessDuties } from '../../../src-domain/closet/guess-duties.ts'
import { nameWords } from '../../../src-domain/closet/name-words.ts'
import { duties, kitAreas } from '../../../src-domain/closet/vocabulary.ts'

// Expected areas and duties: what a walker would say on reading the name (common practice, no source), written before the table was run.
test.each([
  ['Single-skin shelter, pole-pitched', 'shelter', ['shelter']],
  ['Stakes (8)', 'shelter', ['stake']],
  ['Tent pegs', 'shelter', ['stake']],
  ['Groundsheet', 'shelter', ['groundsheet']],
  ['Down quilt 0C', 'sleep', ['top-insulation']],
  ['Sleeping bag liner', 'sleep', []],
  ['Inflatable mat', 'sleep', ['ground-insulation']],
  ['Sit mat', 'extras', ['seat']],
  ['Frameless pack 30', 'carry', ['pack']],
  ['Pack liner', 'carry', ['dry-store']],
  ['Rain jacket', 'clothing', ['rain-shell']],
  ['Down jacket (M)', 'clothing', ['big-jacket']],
  ['Hat + gloves', 'clothing', ['hat', 'gloves']],
  ['Sun hat', 'clothing', ['sun-cover']],
  ['Wool socks, spare', 'footwear', ['socks']],
  ['Trail shoes', 'footwear', ['shoes']],
  ['Canister stove', 'kitchen', ['stove']],
  ['Pot 750', 'kitchen', ['pot']],
  ['Pot lid', 'kitchen', []],
  ['Gas canister', 'kitchen', ['fuel-holder']],
  ['Mini lighter', 'kitchen', ['fire-starter']],
  ['Squeeze filter', 'water', ['water-treatment']],
  ['Soft bottle 1L', 'water', ['water-vessel']],
  ['Bear canister', 'food', ['food-storage']],
  ['Headlamp', 'light_power', ['light']],
  ['Power bank', 'light_power', ['power']],
  ['Charging cable', 'light_power', []],
  ['Compass', 'wayfinding', ['navigation-backup']],
  ['First-aid kit', 'care', ['first-aid']],
  ['Mat repair kit', 'care', ['repair']],
  ['Toothbrush', 'care', ['hygiene']],
  ['Emergency blanket', 'extras', ['emergency-shelter']],
  ['Poles', 'extras', ['pole']],
  ['Zzyzx 3000', undefined, []],
  ['', undefined, []],
] as const)('%s is guessed as %s', (name, area, expected) => {
  expect(guessArea(name)?.area).toBe(area)
  expect(guessDuties(name)).toEqual(expected)
})

test('a guess is always a known code', () => {
  const areas = new Set<string>(kitAreas)
  const codes = new Set(duties.map((duty) => duty.code))
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ unit: 'binary' }),
        fc.array(fc.constantFrom('tent', 'pole', 'down', 'quilt', '+', ',', 'for', 'bag', 'water')).map((words) => words.join(' ')),
      ),
      (name) => {
        const guess = guessArea(name)
        expect(guess === undefined || areas.has(guess.area)).toBe(true)
        for (const code of guessDuties(name)) expect(codes.has(code)).toBe(true)
      },
    ),
  )
})

test('case, accents and plural do not change the words', () => {
  expect(nameWords('Trékking POLES')).toEqual(nameWords('trekking pole'))
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme-ascii' }), (name) => {
      expect(nameWords(name.toUpperCase())).toEqual(nameWords(name.toLowerCase()))
    }),
  )
})
