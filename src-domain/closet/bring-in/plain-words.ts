/** Plain English words that people write in the cells of a sheet: areas, lanes, statuses, ticks, where a mass comes from. No program's words. */
import type { MassUnit } from '../../figures/units.ts'
import { nameWords } from '../name-words.ts'
import type { Status } from '../vocabulary.ts'
import { kitAreas } from '../vocabulary.ts'
import type { MarkLane, SheetMassFrom, WordArea } from './choices.ts'

/** A cell's text as the tables below hold it: lower case, marks as spaces. */
export const plainWord = (text: string): string =>
  text.toLowerCase().replace(/['’]/gu, '').replace(/[_\-–—/.,:;()[\]{}?!*"]+/gu, ' ').replace(/ +/gu, ' ').trim() // prettier-ignore

function table<T extends string>(rows: Readonly<Partial<Record<T, string>>>): ReadonlyMap<string, T> {
  return new Map(
    (Object.entries(rows) as [T, string][]).flatMap(([code, words]) => words.split(', ').map((word): [string, T] => [word, code])),
  )
}

const areaPhrases: Readonly<Partial<Record<WordArea, string>>> = {
  shelter: 'shelter, tent, tarp, tent tarp, roof, camp shelter, big shelter',
  sleep: 'sleep, sleeping, sleep system, bed, bedding, night, sleeping bag, sleep kit, sleeping kit, bedroom',
  carry: 'carry, carrying, pack, packing, backpack, rucksack, bag, storage, pack storage, pack bag, stuff sack',
  clothing: 'clothing, clothes, cloth, wear, apparel, layer, wardrobe, garment, outerwear, insulation, rain gear, raingear, rain wear, underwear, insulating layer, warm clothes, wet weather',
  footwear: 'footwear, feet, foot, shoe, boot, sock',
  kitchen: 'kitchen, cook, cooking, stove, cookware, fuel, cook fuel, kitchen fuel, kitchenware',
  water: 'water, hydration, drink, drinking, water treatment, water purification, hydration water',
  food: 'food, meal, snack, ration, eating, nutrition, provision',
  light_power: 'light power, light, lighting, power, electronic, electric, electrical, tech, technology, device, gadget, battery, electronic light, light electronic',
  wayfinding: 'wayfinding, navigation, nav, map, orientation, finding the way, navigation safety',
  care: 'care, first aid, hygiene, toiletry, medical, medicine, health, repair, personal care, bathroom, wash, washing, toilet, safety, first aid repair, body care, hygiene first aid, emergency, med, cleaning, safety first aid, repair first aid',
  extras: 'extra, luxury, comfort, document, fun, entertainment, leisure, photo, photography, camera, snow, winter, climbing, luxury item',
  by_name: 'misc, miscellaneous, other, stuff, various, accessory, tool, general, sundry, rest, odd and end, odd, essential, small item, small, big item, personal, bit, everything else, else, none, uncategorised, uncategorized, base, gear, item, kit, equipment, worn, packed, consumable',
} // prettier-ignore

const areaByWords: ReadonlyMap<string, WordArea> = new Map([
  ...kitAreas.map((code): [string, WordArea] => [nameWords(code.replace('_', ' ')).join(' '), code]),
  ...[...table(areaPhrases)].map(([phrase, code]): [string, WordArea] => [nameWords(phrase).join(' '), code]),
])
/** Words that say nothing of which area it is. */
const fillers: ReadonlySet<string> = new Set([
  'system',
  'item',
  'gear',
  'kit',
  'stuff',
  'equipment',
  'section',
  'and',
  'the',
  'my',
  'a',
  'of',
  'for',
  'in',
  'thing',
  'group',
  'category',
  'supply',
  'essential',
  'worn',
  'packed',
  'carried',
  'spare',
])

/** The kit area a sheet's own word for a group of things means; `by_name` where the word is too wide; undefined where it is not known. A word that names two areas ("Tent and sleep") is too wide. */
export function areaOfWord(text: string): WordArea | undefined {
  const words = nameWords(text)
  if (words.length === 0 || words.length > 6) return undefined
  const whole = areaByWords.get(words.join(' '))
  if (whole) return whole
  const telling = words.filter((word) => !fillers.has(word))
  const left = areaByWords.get(telling.join(' '))
  if (left) return left
  const each = new Set(phrasesIn(telling))
  if (each.has(undefined) || each.size === 0) return undefined
  each.delete('by_name')
  return each.size === 1 ? [...each][0] : 'by_name'
}

/** The areas of the longest phrases that cover the words ("first aid", "hygiene"); undefined for a word in none. */
function phrasesIn(words: readonly string[]): readonly (WordArea | undefined)[] {
  if (words.length === 0) return []
  for (let length = Math.min(3, words.length); length > 0; length -= 1) {
    const area = areaByWords.get(words.slice(0, length).join(' '))
    if (area) return [area, ...phrasesIn(words.slice(length))]
  }
  return [undefined, ...phrasesIn(words.slice(1))]
}

const laneByWord = table<MarkLane>({
  on_me: 'on me, worn, wear, wearing, on body, on the body, on my body, body, worn weight, in hand, hand, w, wn, worn items, worn clothes, worn clothing, clothes worn, clothing worn, wearing now, worn gear, on person, items worn, carried on me, worn carried in hand',
  in_pack: 'in pack, in the pack, pack, packed, carried, carry, base, base weight, backpack, bag, in bag, rucksack, p, b, pk, packed items, packed clothing, clothing packed, in backpack, base items, carried in pack, carried items',
  used_up: 'used up, consumable, consumables, consumed, consume, cons, c, eaten, burned, burnt, burned up, used on the way, consumable items, food fuel, food and fuel, food fuel water, food water fuel, food and water, food water',
  home: 'home, at home, left home, left at home, left, leave, leave home, stays home, stay home, stays, not taken, not packed, out, skip, skipped, unpacked',
}) // prettier-ignore

/** The lane a mark or section says, by words or the usual single letters; undefined when it says none. */
export const laneOfWord = (text: string): MarkLane | undefined => laneByWord.get(plainWord(text))

const unitByWord = table<MassUnit>({
  g: 'g, gr, gram, grams, gm, gms, gramme, grammes',
  kg: 'kg, kgs, kilo, kilos, kilogram, kilograms',
  oz: 'oz, ozs, ounce, ounces',
  lb: 'lb, lbs, pound, pounds',
})
/** A cell that holds nothing but a unit of mass. */
export const unitOfWord = (text: string): MassUnit | undefined => unitByWord.get(plainWord(text))

const statusByWord = table<Status>({
  owned: 'owned, own, have, got, mine, in closet, have it, got it, bought, purchased',
  wished: 'wished, wish, wished for, wishing, to buy, buy, want, wanted, needed, need, ordered, to get, to order, planned, considering',
  lent: 'lent, lent out, loaned, loaned out, on loan',
  sold: 'sold, given away, gave away, gifted',
  retired: 'retired, recycled, broken, worn out, replaced, binned, dead',
  lost: 'lost, missing, stolen',
})
export const statusOfWord = (text: string): Status | undefined => statusByWord.get(plainWord(text))

/** A tick for yes, a tick for no, or neither. An empty cell is no tick. */
export function tick(text: string): boolean | undefined {
  if (/^(?:x|✓|✔|☑|✅|y|yes|true|1|1\.0|•|●|on|ja|oui|si)$/iu.test(text)) return true
  return /^(?:n|no|false|0|0\.0|☐|✗|✘|❌|off|-|–|)$/iu.test(text) ? false : undefined
}

const fromByWord = table<SheetMassFrom>({
  measured: 'measured, weighed, actual, real, scale, my scale, own scale, kitchen scale, weighed by me, me, mine, verified',
  claimed:
    'claimed, claim, maker, makers, mfr, mfg, manufacturer, spec, specs, specified, listed, advertised, catalogue, catalog, stated, published, nominal, official, website, web, online, label, shop',
  estimated: 'estimated, estimate, est, guess, guessed, approx, approximate, about, roughly, assumed',
})
/** Where a mass comes from, said by a word of its own or by one word among others. */
export function massFromOfWord(text: string): SheetMassFrom | undefined {
  const plain = plainWord(text)
  const whole = fromByWord.get(plain)
  if (whole) return whole
  return plain.split(' ').map((word) => fromByWord.get(word)).find((found) => found !== undefined) // prettier-ignore
}
