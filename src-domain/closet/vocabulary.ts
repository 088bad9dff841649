/**
 * The trade's fixed codes: kit areas, duties with their moments, traits with their units. Codes never change once released;
 * the words shown for them can be edited by the person and stand in the store (`word`), these are the words they start with.
 */

export const kitAreas = [
  'shelter',
  'sleep',
  'carry',
  'clothing',
  'footwear',
  'kitchen',
  'water',
  'food',
  'light_power',
  'wayfinding',
  'care',
  'extras',
] as const
export type KitArea = (typeof kitAreas)[number]

export interface KitAreaWord {
  readonly code: KitArea
  readonly label: string
  /** The two letters on strips and their clippings. */
  readonly short: string
}

export const kitAreaWords: readonly KitAreaWord[] = [
  { code: 'shelter', label: 'Shelter', short: 'Sh' },
  { code: 'sleep', label: 'Sleep', short: 'Sl' },
  { code: 'carry', label: 'Carry', short: 'Ca' },
  { code: 'clothing', label: 'Clothing', short: 'Cl' },
  { code: 'footwear', label: 'Footwear', short: 'Ft' },
  { code: 'kitchen', label: 'Kitchen', short: 'Ki' },
  { code: 'water', label: 'Water', short: 'Wa' },
  { code: 'food', label: 'Food', short: 'Fo' },
  { code: 'light_power', label: 'Light & power', short: 'Lp' },
  { code: 'wayfinding', label: 'Wayfinding', short: 'Wy' },
  { code: 'care', label: 'Care', short: 'Cr' },
  { code: 'extras', label: 'Extras', short: 'Ex' },
]

export const lanes = ['on_me', 'in_pack', 'used_up'] as const
export type Lane = (typeof lanes)[number]

export const statuses = ['owned', 'wished', 'lent', 'sold', 'retired', 'lost'] as const
export type Status = (typeof statuses)[number]

/** Where an item's mass comes from; `none`: nothing is known of it. */
export const massOrigins = ['measured', 'claimed', 'estimated', 'none'] as const
export type MassOrigin = (typeof massOrigins)[number]

/** How an item came to its owner. */
export const ways = ['bought', 'made', 'gift', 'trial'] as const
export type Way = (typeof ways)[number]

export type Moment = 'walking' | 'stop' | 'camp' | 'night'

/** A need that an item covers. */
export interface Duty {
  readonly code: string
  readonly label: string
  readonly area: KitArea
  readonly moments: readonly Moment[]
  /** No saving removes it; striking it asks for a reason. */
  readonly safety: boolean
  /** Its items are never let go for lack of use. */
  readonly kept: boolean
  /** `night`: asked by every brief with a night out; `cold`: when the low is under 0 °C or the season is winter; `want`: only ever the walker's wish. */
  readonly asked: 'night' | 'cold' | 'want' | 'entry'
}

const moment: Readonly<Record<string, Moment>> = { w: 'walking', s: 'stop', c: 'camp', n: 'night' }

/** `!` safety, `k` kept too, `+` asked by every night out, `*` asked in the cold, `~` only a want. */
function duty(area: KitArea, code: string, label: string, moments: string, marks = ''): Duty {
  return {
    code,
    label,
    area,
    moments: Array.from(moments, (letter) => moment[letter]!),
    safety: marks.includes('!'),
    kept: marks.includes('k'),
    asked: marks.includes('+') ? 'night' : marks.includes('*') ? 'cold' : marks.includes('~') ? 'want' : 'entry',
  }
}

export const duties: readonly Duty[] = [
  duty('shelter', 'shelter', 'shelter', 'cn', '!+'),
  duty('shelter', 'groundsheet', 'groundsheet', 'cn'),
  duty('shelter', 'pole', 'shelter pole', 'cn'),
  duty('shelter', 'stake', 'stakes', 'cn'),
  duty('sleep', 'top-insulation', 'top insulation', 'n', '+'),
  duty('sleep', 'ground-insulation', 'ground insulation', 'n', '+'),
  duty('sleep', 'head-rest', 'head rest', 'n', '~'),
  duty('carry', 'pack', 'pack', 'w', '+'),
  duty('carry', 'dry-store', 'dry storage', 'w', '+'),
  duty('clothing', 'rain-shell', 'rain shell', 'wsc', '!+'),
  duty('clothing', 'rain-legs', 'dry legs', 'wsc'),
  duty('clothing', 'wind-shell', 'wind shell', 'ws'),
  duty('clothing', 'base-layer', 'base layer', 'wscn', '+'),
  duty('clothing', 'legwear', 'legwear', 'wsc', '+'),
  duty('clothing', 'mid-layer', 'mid layer', 'wsc', '+'),
  duty('clothing', 'big-jacket', 'rest insulation', 'sc', '*'),
  duty('clothing', 'dry-base', 'sleep layer', 'n', '+'),
  duty('clothing', 'hat', 'warm hat', 'wscn', '*'),
  duty('clothing', 'gloves', 'gloves', 'ws', '*'),
  duty('clothing', 'sun-cover', 'sun cover', 'w'),
  duty('footwear', 'shoes', 'footwear', 'w', '+'),
  duty('footwear', 'socks', 'socks', 'w', '+'),
  duty('footwear', 'camp-shoes', 'camp footwear', 'c', '~'),
  duty('footwear', 'traction', 'traction', 'w', '!k'),
  duty('kitchen', 'stove', 'stove', 'c'),
  duty('kitchen', 'pot', 'pot', 'c'),
  duty('kitchen', 'utensil', 'utensil', 'c'),
  duty('kitchen', 'windscreen', 'windscreen', 'c'),
  duty('kitchen', 'fuel-holder', 'fuel container', 'c'),
  duty('kitchen', 'fire-starter', 'fire starter', 'c', '!k+'),
  duty('water', 'water-vessel', 'water vessel', 'w', '+'),
  duty('water', 'water-treatment', 'water treatment', 'w', '!+'),
  duty('water', 'treatment-backup', 'treatment backup', 'w', '!k'),
  duty('food', 'food-storage', 'food storage', 'n'),
  duty('light_power', 'light', 'light', 'wcn', '!+'),
  duty('light_power', 'spare-light', 'light to spare', 'wcn', '!k+'),
  duty('light_power', 'power', 'power', 'c'),
  duty('wayfinding', 'navigation', 'navigation', 'w', '!k+'),
  duty('wayfinding', 'navigation-backup', 'navigation backup', 'w', '!k+'),
  duty('wayfinding', 'distress-signal', 'distress signal', 'wscn', '!k+'),
  duty('care', 'first-aid', 'first aid', 'wscn', '!k+'),
  duty('care', 'medicine', 'medicine', 'wscn', '!k'),
  duty('care', 'repair', 'repair', 'c', '!k+'),
  duty('care', 'hygiene', 'hygiene', 'c', '+'),
  duty('extras', 'emergency-shelter', 'emergency shelter', 'ws', '!k+'),
  duty('extras', 'avalanche', 'avalanche kit', 'w', '!k'),
  duty('extras', 'helmet', 'helmet', 'w', '!k'),
  duty('extras', 'rope', 'rope', 'w', '!k'),
  duty('extras', 'seat', 'seat', 'c', '~'),
  duty('extras', 'reading', 'reading', 'c', '~'),
]

/** A property that a calculation reads. `choice`: one of `choices`; `yes`: a flag; `date`: a local date; else a number in `unit`. */
export interface Trait {
  readonly code: string
  readonly label: string
  readonly unit: string
  readonly choices?: readonly string[]
  /** Kit areas whose add and drawer sheets offer it first. */
  readonly areas: readonly KitArea[]
}

const trait = (code: string, label: string, unit: string, areas: readonly KitArea[], choices?: readonly string[]): Trait =>
  choices === undefined ? { code, label, unit, areas } : { code, label, unit, areas, choices }

export const traits: readonly Trait[] = [
  trait('rated-temperature', 'Rated temperature', 'degC', ['sleep']),
  trait('rating-kind', 'Kind of rating', 'choice', ['sleep'], ['comfort', 'limit', 'extreme', 'maker']),
  trait('form', 'Form', 'choice', ['sleep', 'shelter'], ['bag', 'hoodless', 'quilt', 'hammock']),
  trait('fill', 'Fill', 'choice', ['sleep', 'clothing'], ['down', 'synthetic']),
  trait('liner', 'Liner', 'choice', ['sleep'], ['none', 'silk', 'cotton', 'fleece']),
  trait('thermal-resistance', 'Thermal resistance', 'm2K/W', ['sleep']),
  trait('pad-length', 'Mat length', 'choice', ['sleep'], ['full', 'torso']),
  trait('garment-clo', 'Garment insulation', 'clo', ['clothing', 'footwear']),
  trait('air-permeability', 'Air permeability', 'l/m2s', ['clothing']),
  trait(
    'cover-kind',
    'Kind of cover',
    'choice',
    ['clothing', 'carry'],
    [
      ...['jacket', 'poncho', 'cape', 'umbrella', 'wind-shirt'],
      ...['trousers', 'chaps', 'kilt', 'long-poncho'],
      ...['pack-liner', 'dry-bag', 'waterproof-pack', 'pack-cover'],
    ],
  ),
  trait('water-capacity', 'Water it holds', 'l', ['water']),
  trait('treats', 'Treats, a piece or dose', 'l', ['water']),
  trait('treatment-kind', 'Kind of treatment', 'choice', ['water'], ['filter', 'purifier', 'chlorine', 'iodine', 'uv', 'boil']),
  trait('energy', 'Energy', 'kcal/100g', ['food']),
  trait('bulk-density', 'Bulk density', 'kg/l', ['food']),
  trait('fuels', 'Fuel', 'choice', ['kitchen'], ['gas', 'alcohol', 'petrol', 'paraffin', 'solid', 'wood']),
  trait('efficiency', 'Efficiency', '1', ['kitchen']),
  trait('feed', 'Feed', 'choice', ['kitchen'], ['upright', 'inverted', 'liquid', 'none']),
  trait('valve', 'Shuts off', 'yes', ['kitchen']),
  trait('priming', 'Priming', 'g', ['kitchen']),
  trait('pot-metal', 'Pot metal', 'choice', ['kitchen'], ['aluminium', 'titanium', 'steel']),
  trait('net-full', 'Contents when full', 'g', ['kitchen']),
  trait('heat-value', 'Heat value', 'MJ/kg', ['kitchen']),
  trait('gas-mix', 'Gas mix', 'text', ['kitchen']),
  trait('cell', 'Cell', 'choice', ['light_power'], ['lithium-ion', 'lithium', 'alkaline', 'nimh']),
  trait('charge', 'Charge', 'Wh', ['light_power']),
  trait('draw', 'Draw', 'W', ['light_power']),
  trait('hours-a-day', 'Hours a day', 'h', ['light_power']),
  trait('burn-time', 'Burn time', 'h', ['light_power']),
  trait('port-efficiency', 'Efficiency of its port', '1', ['light_power']),
  trait('kept-warm', 'Kept warm', 'yes', ['light_power']),
  trait('pack-volume', 'Pack volume', 'l', ['carry']),
  trait('comfortable-load', 'Comfortable load', 'kg', ['carry']),
  trait('pack-kind', 'Kind of pack', 'choice', ['carry'], ['framed', 'light-framed', 'frameless']),
  trait('packed-volume', 'Packed volume', 'l', ['shelter', 'sleep', 'clothing', 'extras']),
  trait('packing-class', 'How it packs', 'choice', ['sleep', 'clothing', 'shelter'], ['hard', 'firm', 'soft', 'down']),
  trait('stowed', 'Stowed', 'choice', ['shelter', 'sleep', 'kitchen', 'water'], ['inside', 'outside', 'nested']),
  trait('hard-canister', 'Hard food canister', 'l', ['food']),
  trait('expires', 'Expires', 'date', ['care', 'water', 'food']),
]

const areaSet: ReadonlySet<string> = new Set(kitAreas)
export const isKitArea = (code: string): code is KitArea => areaSet.has(code)
export const dutyByCode: ReadonlyMap<string, Duty> = new Map(duties.map((one) => [one.code, one]))
export const traitByCode: ReadonlyMap<string, Trait> = new Map(traits.map((one) => [one.code, one]))
export const kitAreaWord: ReadonlyMap<KitArea, KitAreaWord> = new Map(kitAreaWords.map((one) => [one.code, one]))
