import type { Lane } from '../../../src-domain/closet/vocabulary.ts'
import { emptyBrief, type Brief, type Leg } from '../../../src-domain/trips/brief.ts'
import { emptyWalker, type Walker } from '../../../src-domain/trips/walker.ts'

/** The one who walks in the demo. The year of birth is moved with the dates. */
export const demoWalker: Walker = {
  ...emptyWalker,
  bodyMassG: 58_000,
  heightMm: 1_680,
  bornYear: 1989,
  sex: 'female',
  coldOffsetK: 0.5,
  paceFactor: 1.1,
  principles: ['no-throwaways'],
}

const leg = (
  day: number,
  name: string,
  [km, climbM, descentM]: readonly [number, number, number],
  terrain: Leg['terrain'],
  endHeightM: number | null,
): Leg => ({
  day,
  name,
  lengthM: km * 1000,
  climbM,
  descentM,
  terrain,
  endHeightM,
  camp: endHeightM !== null,
})

const sources: Brief['sources'] = [
  { atM: 7_000, name: 'stream', sure: 'sure', safe: false },
  { atM: 16_000, name: 'stream at camp', sure: 'sure', safe: false },
  { atM: 23_000, name: 'stream, last before the ridge', sure: 'sure', safe: false },
  { atM: 34_000, name: 'tap at Askel hut', sure: 'sure', safe: true },
  { atM: 41_000, name: 'stream', sure: 'sure', safe: false },
  { atM: 49_000, name: 'tarn at camp', sure: 'sure', safe: false },
  { atM: 55_000, name: 'stream', sure: 'unsure', safe: false },
]

/** [km, m] of the tops and saddles of the way; between them it rises and falls in a half wave. */
const ridge: readonly (readonly [number, number])[] = [
  [0, 240], [3.5, 560], [6, 520], [9.2, 950], [11.5, 915], [13, 1000], [16, 830], [19, 1200], [21, 1130], [24, 1370], [26.5, 1330], [29.5, 1410],
  [31, 1250], [32.2, 1330], [34, 1010], [37.2, 1310], [39.5, 1140], [42.3, 1340], [44.3, 1160], [46.2, 1370], [49, 960], [51.6, 1220],
  [53.8, 1040], [56.3, 1230], [58.5, 1100], [62, 310],
] // prettier-ignore

function ridgeHeight(km: number): number {
  const at = Math.max(
    1,
    ridge.findIndex(([to]) => to >= km),
  )
  const [[fromKm, from], [toKm, to]] = [ridge[at - 1]!, ridge[at]!]
  return from + ((to - from) * (1 - Math.cos((Math.PI * (km - fromKm)) / (toKm - fromKm)))) / 2
}

const everyKm = (step: number): readonly number[] => Array.from({ length: Math.round(62 / step) + 1 }, (_, i) => i * step)
const track: Brief['track'] = everyKm(0.25).map((km) => [km * 1000, Math.round(ridgeHeight(km))])
/** North-east to the hut, then south-east, winding. */
const plan: Brief['plan'] = everyKm(0.25).map((km) => {
  const up = km < 34 ? km / 34 : 1 - (km - 34) / 40
  return [
    Number((55.4 + 0.2 * up + 0.006 * Math.sin(km * 0.9)).toFixed(6)),
    Number((-2.2 + 0.008 * km + 0.012 * Math.sin(km * 0.6) + 0.004 * Math.sin(km * 1.7)).toFixed(6)),
  ]
})

/** Skarn hills, the long ridge: an invented place in the hills of north Britain, so that the sun has somewhere to set. */
export const demoBrief: Brief = {
  ...emptyBrief,
  place: { latDeg: 55.4, lonDeg: -2.2 },
  legs: [
    leg(1, 'Skarn road end to camp', [16, 850, 260], 'path', 830),
    leg(2, 'to Askel hut', [18, 900, 720], 'brush', 1010),
    leg(3, 'to camp', [15, 700, 750], 'rough', 960),
    leg(4, 'to Brae bridge', [13, 450, 1100], 'path', null),
  ],
  days: [
    { day: 1, startMinute: 540, lowC: 8, highC: 15 },
    { day: 2, startMinute: 510, lowC: 7, highC: 13 },
    { day: 3, startMinute: 510, lowC: 8, highC: 13 },
    { day: 4, startMinute: 510, lowC: null, highC: 14 },
  ],
  nightsOut: 3,
  lowC: 7,
  highC: 15,
  forecastHeightM: 550,
  windKmh: 30,
  rain: 'wet',
  mountains: true,
  sitMinutes: 30,
  stopMinutes: 10,
  sources,
  resupplies: [{ atM: 34_000, day: 2, name: 'Food box, Askel hut', what: ['food'] }],
  rules: ['valve-only', 'no-wood'],
  meals: { boilsPerDay: 2, litresPerBoil: 0.6, coldDays: [], hotBreakfast: true, eatenOutKcal: 0 },
  headCount: 2,
  struck: [{ duty: 'spare-light', reason: 'phone lamp' }],
  track,
  plan,
  trackRead: { points: track.length, heightsFrom: 'terrain', upBandM: 290 },
}

export const demoSeasons = [
  { name: 'Summer', kind: 'summer', brief: { ...emptyBrief, nightsOut: 2, lowC: 6, highC: 20, rain: 'showers' } },
  { name: 'Autumn', kind: 'autumn', brief: { ...emptyBrief, nightsOut: 3, lowC: -2, highC: 11, rain: 'wet' } },
  { name: 'Early spring', kind: 'spring', brief: { ...emptyBrief, nightsOut: 2, lowC: -6, highC: 8, rain: 'wet' } },
] as const satisfies readonly { readonly name: string; readonly kind: string; readonly brief: Brief }[]

export interface DemoSupply {
  readonly name: string
  readonly area: 'food' | 'water' | 'kitchen' | 'care'
  readonly unit: 'g' | 'ml'
  readonly massFrom: 'measured' | 'claimed' | 'estimated'
  readonly needs?: string
  readonly traits: readonly (readonly [code: string, number: number])[]
  /** Amount in the unit: each day, each dry stretch, or on the whole trip. */
  readonly per?: 'day' | 'stretch'
  readonly amount: number
  readonly from: 'brief' | 'weighed' | 'typed'
  readonly container?: string
}

/** 1 ml of water is 1 g here. Food: 4.39 kcal/g, so that two days of it are the kilocalories a day of the ridge asks for. */
export const demoSupplies: readonly DemoSupply[] = [
  {
    name: 'Food',
    area: 'food',
    unit: 'g',
    massFrom: 'measured',
    needs: 'utensil:1*',
    traits: [
      ['energy', 439],
      ['bulk-density', 0.5],
    ],
    per: 'day',
    amount: 642,
    from: 'brief',
  },
  {
    name: 'Water',
    area: 'water',
    unit: 'ml',
    massFrom: 'measured',
    needs: 'water-vessel:1*',
    traits: [],
    per: 'stretch',
    amount: 1500,
    from: 'brief',
    container: 'Soft bottles, 1 L',
  },
  {
    name: 'Gas',
    area: 'kitchen',
    unit: 'g',
    massFrom: 'measured',
    needs: 'fuel-holder:1',
    traits: [['heat-value', 45.57]],
    amount: 100,
    from: 'weighed',
    container: 'Fuel canister, empty',
  },
  { name: 'Paper and hand gel', area: 'care', unit: 'g', massFrom: 'estimated', traits: [], amount: 60, from: 'typed' },
]

const onMe = ['Walking poles', 'Wool shirt, long sleeve', 'Stretch trousers', 'Trail shoes', 'Wool socks', 'Wrist altimeter']
const always = [
  'Rain jacket',
  'Synthetic jacket, hooded',
  'Hat and liner gloves',
  'Soft bottles, 1 L',
  'Squeeze filter',
  'Headlamp',
  'Power bank, 37 Wh',
  'Phone in its case',
  'Map and compass',
  'First aid and repair',
  'Wash bag',
]
const hot = ['Canister stove', 'Pot, 750 ml, lid and spoon', 'Fuel canister, empty']

export interface DemoLoadout {
  readonly name: string
  readonly of: 'trip' | 'Summer'
  readonly parent?: string
  readonly chosen?: boolean
  readonly on_me: readonly string[]
  readonly in_pack: readonly string[]
  readonly stakes: number
  readonly supplies: readonly string[]
  readonly carriedBy?: readonly [item: string, who: string]
}

const mira = ['Emergency bag', 'Mira'] as const

/** A, B and C of the comparison, and a starting point for summer. */
export const demoLoadouts: readonly DemoLoadout[] = [
  {
    name: 'Pole-pitched, autumn',
    of: 'trip',
    chosen: true,
    on_me: onMe,
    in_pack: [
      'Single-skin shelter, pole-pitched',
      'Groundsheet, thin film',
      'Down quilt, 0 °C comfort',
      'Inflatable mat, R 4.8',
      'Light-framed pack, 40 L',
      'Sleep leggings, wool',
      ...always,
      ...hot,
    ],
    stakes: 8,
    supplies: ['Food', 'Water', 'Gas', 'Paper and hand gel'],
    carriedBy: mira,
  },
  {
    name: 'Two-skin tent',
    of: 'trip',
    parent: 'Pole-pitched, autumn',
    on_me: onMe,
    in_pack: [
      'Two-skin tent, one person',
      'Down quilt, −6 °C comfort',
      'Inflatable mat, R 4.8',
      'Light-framed pack, 40 L',
      'Sleep leggings, wool',
      'Rain trousers',
      ...always,
      ...hot,
    ],
    stakes: 6,
    supplies: ['Food', 'Water', 'Gas', 'Paper and hand gel'],
    carriedBy: mira,
  },
  {
    name: 'Tarp and bivouac bag',
    of: 'trip',
    parent: 'Pole-pitched, autumn',
    on_me: onMe,
    in_pack: [
      'Flat tarp, 2.4 × 1.5 m',
      'Bivouac bag, breathable',
      'Down quilt, 0 °C comfort',
      'Foam mat, torso length',
      'Frameless pack, 30 L',
      'Rain kilt',
      ...always,
    ],
    stakes: 6,
    supplies: ['Food', 'Water', 'Paper and hand gel'],
    carriedBy: mira,
  },
  {
    name: 'Summer ridge',
    of: 'Summer',
    on_me: onMe,
    in_pack: [
      'Flat tarp, 2.4 × 1.5 m',
      'Bivouac bag, breathable',
      'Down quilt, 0 °C comfort',
      'Foam mat, torso length',
      'Frameless pack, 30 L',
      'Wind shirt',
      'Alcohol burner and screen',
      'Pot, 750 ml, lid and spoon',
      ...always,
    ],
    stakes: 6,
    supplies: ['Food', 'Water'],
  },
]

export const laneOf = (loadout: DemoLoadout): readonly (readonly [name: string, lane: Lane])[] => [
  ...loadout.on_me.map((name) => [name, 'on_me'] as const),
  ...loadout.in_pack.map((name) => [name, 'in_pack'] as const),
]
