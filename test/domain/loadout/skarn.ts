import type { Loadout } from '../../../src-domain/loadout/loadout.ts'
import { withAmounts } from '../../../src-domain/loadout/amounts.ts'
import { emptyBrief, type Brief, type Trip } from '../../../src-domain/trips/brief.ts'
import { emptyWalker, type Walker } from '../../../src-domain/trips/walker.ts'
import type { LineFacts } from '../../../src-domain/loadout/gather.ts'
import type { Lane } from '../../../src-domain/closet/vocabulary.ts'
import { idOf, itemRow, kitIndex, loadoutOf, supplyRow, type TestItem, type TestSupply } from './kit.ts'

/** The demo trip of the mocks (LOOK.md, loadout.html, compare.html): invented things, figures recomputed there. Each weighing ±0.65 g, the scale's gain 0.08 %. */
export const skarnItems: readonly TestItem[] = [
  { name: 'Wool shirt, long sleeve', area: 'clothing', g: 168, duties: 'base-layer' },
  { name: 'Stretch trousers', area: 'clothing', g: 274, duties: 'legwear' },
  { name: 'Walking poles', area: 'carry', g: 161, pieces: 2, duties: 'pole' },
  { name: 'Trail shoes', area: 'footwear', g: 274, pieces: 2, duties: 'shoes' },
  { name: 'Wool socks', area: 'footwear', g: 31, pieces: 2, duties: 'socks' },
  { name: 'Wrist altimeter', area: 'wayfinding', g: 44, duties: 'navigation-backup' },
  {
    name: 'Single-skin shelter, pole-pitched',
    area: 'shelter',
    g: 514,
    duties: 'shelter',
    needs: [
      { duty: 'pole', pieces: 2, kind: 'shared' },
      { duty: 'stake', pieces: 6, kind: 'reserved' },
    ],
  },
  { name: 'Stakes', area: 'shelter', g: 10.5, pieces: 8, duties: 'stake' },
  { name: 'Groundsheet, thin film', area: 'shelter', g: 46, from: 'claimed', status: 'wished', duties: 'groundsheet' },
  { name: 'Down quilt, 0 °C comfort', area: 'sleep', g: 618, duties: 'top-insulation' },
  { name: 'Inflatable mat, three-quarter', area: 'sleep', g: 352, from: 'claimed', duties: 'ground-insulation' },
  { name: 'Light-framed pack, 40 L', area: 'carry', g: 792, duties: 'pack dry-store*', traits: { 'comfortable-load': 10 } },
  { name: 'Rain jacket', area: 'clothing', g: 214, duties: 'rain-shell' },
  { name: 'Synthetic jacket, hooded', area: 'clothing', g: 308, from: 'claimed', duties: 'mid-layer* big-jacket*' },
  { name: 'Sleep leggings, wool', area: 'clothing', g: 142, duties: 'dry-base' },
  { name: 'Hat and liner gloves', area: 'clothing', g: 79, duties: 'hat* gloves*' },
  { name: 'Canister stove', area: 'kitchen', g: 74, duties: 'stove fire-starter*', needs: [{ duty: 'pot', pieces: 1, kind: 'shared' }] },
  { name: 'Pot, 750 ml, lid and spoon', area: 'kitchen', g: 126, duties: 'pot* utensil*' },
  { name: 'Fuel canister', area: 'kitchen', g: 98, duties: 'fuel-holder', traits: { 'net-full': 100 } },
  { name: 'Soft bottles, 1 L', area: 'water', g: 38, pieces: 2, duties: 'water-vessel', traits: { 'water-capacity': 1 } },
  { name: 'Squeeze filter', area: 'water', g: 68, duties: 'water-treatment' },
  { name: 'Headlamp', area: 'light_power', g: 56, duties: 'light' },
  { name: 'Power bank, 37 Wh', area: 'light_power', g: 178, duties: 'power' },
  { name: 'Phone in its case', area: 'wayfinding', g: 194, duties: 'distress-signal' },
  { name: 'Map and compass', area: 'wayfinding', g: 68, duties: 'navigation' },
  { name: 'First aid and repair', area: 'care', g: 126, duties: 'first-aid* repair*' },
  { name: 'Wash bag', area: 'care', g: 95, from: 'estimated', duties: 'hygiene' },
  { name: 'Emergency bag', area: 'extras', g: 108, duties: 'emergency-shelter' },
  // On the shelf, and in the other two loadouts of compare.html.
  { name: 'Rain kilt', area: 'clothing', g: 58, duties: 'rain-legs' },
  {
    name: 'Two-skin tent, one person',
    area: 'shelter',
    g: 1164,
    duties: 'shelter',
    needs: [{ duty: 'stake', pieces: 4, kind: 'reserved' }],
  },
  { name: 'Down quilt, −6 °C comfort', area: 'sleep', g: 846, duties: 'top-insulation' },
  { name: 'Rain trousers', area: 'clothing', g: 171, duties: 'rain-legs' },
  { name: 'Flat tarp, 2.4 × 1.5 m', area: 'shelter', g: 268, duties: 'shelter', needs: [{ duty: 'stake', pieces: 6, kind: 'reserved' }] },
  { name: 'Bivouac bag, breathable', area: 'shelter', g: 232, duties: 'groundsheet' },
  { name: 'Foam mat, torso length', area: 'sleep', g: 183, duties: 'ground-insulation' },
  { name: 'Frameless pack, 30 L', area: 'carry', g: 436, duties: 'pack dry-store*' },
]

export const skarnSupplies: readonly TestSupply[] = [
  {
    name: 'Food',
    area: 'food',
    unit: 'piece',
    gPerUnit: 642,
    from: 'measured',
    rule: { per: 'day', amountMilli: 1000 },
    needs: [{ duty: 'utensil', pieces: 1, kind: 'shared' }],
  },
  {
    name: 'Water',
    area: 'water',
    unit: 'ml',
    rule: { per: 'stretch', amountMilli: 1_500_000 },
    needs: [{ duty: 'water-vessel', pieces: 1, kind: 'shared' }],
  },
  { name: 'Gas', area: 'kitchen', needs: [{ duty: 'fuel-holder', pieces: 1, kind: 'shared' }] },
  { name: 'Paper and hand gel', area: 'care', from: 'estimated' },
]

export const skarnTrip: Trip = { startsOn: '2025-10-09', endsOn: '2025-10-12', zone: 'Europe/London', season: 'autumn' }
const leg = (day: number, km: number) => ({
  day,
  name: '',
  lengthM: km * 1000,
  climbM: null,
  descentM: null,
  terrain: 'path' as const,
  endHeightM: null,
  camp: true,
})
export const skarnBrief: Brief = {
  ...emptyBrief,
  legs: [leg(1, 16), leg(2, 18), leg(3, 15), leg(4, 13)],
  lowC: -2,
  sources: [{ atM: 7000, name: '', sure: 'sure', safe: false }],
  resupplies: [{ atM: 34_000, day: 2, name: 'Askel hut', what: ['food'] }],
  meals: { ...emptyBrief.meals, boilsPerDay: 2 },
  headCount: 2,
  struck: [{ duty: 'spare-light', reason: 'phone lamp' }],
}
export const skarnWalker: Walker = { ...emptyWalker, bodyMassG: 58_000, heightMm: 1680, bornYear: 1989 }

const index = kitIndex(skarnItems, skarnSupplies)
export const skarnItem = (name: string) => index.item(idOf(skarnItems, name))!

const worn = ['Wool shirt, long sleeve', 'Stretch trousers', 'Walking poles', 'Trail shoes', 'Wool socks', 'Wrist altimeter']
const alike = [
  'Rain jacket',
  'Synthetic jacket, hooded',
  'Hat and liner gloves',
  'Soft bottles, 1 L',
  'Squeeze filter',
  'Headlamp',
  'Power bank, 37 Wh',
]
const alikeToo = ['Phone in its case', 'Map and compass', 'First aid and repair', 'Wash bag']
const kitchen = ['Canister stove', 'Pot, 750 ml, lid and spoon', 'Fuel canister']

interface Choice {
  readonly name: string
  readonly pack: readonly string[]
  readonly stakes: number
  readonly gas: boolean
}

function skarn({ name, pack, stakes, gas }: Choice): Loadout {
  let id = 0
  const row = (item: string, lane: Lane, more: Partial<LineFacts> = {}) => {
    const at = idOf(skarnItems, item)
    return itemRow(++id, at, { lane, pieces: skarnItems[at - 1]!.pieces ?? 1, ...more })
  }
  const supply = (n: number, more: Partial<LineFacts>) => supplyRow(++id, n, more)
  const rows = [
    ...worn.map((item) => row(item, 'on_me')),
    ...[...pack, ...alike, ...alikeToo].map((item) => row(item, 'in_pack')),
    row('Stakes', 'in_pack', { pieces: stakes }),
    row('Emergency bag', 'in_pack', { carriedBy: 'Mira' }),
    supply(1, { amountFrom: 'brief' }),
    supply(2, { amountFrom: 'brief', containerId: idOf(skarnItems, 'Soft bottles, 1 L') }),
    supply(4, { amountMilli: 60_000 }),
    ...(gas ? [supply(3, { amountFrom: 'weighed', amountMilli: 100_000, containerId: idOf(skarnItems, 'Fuel canister') })] : []),
  ]
  return withAmounts(loadoutOf(index, rows, name), { brief: skarnBrief, trip: skarnTrip })
}

export const polePitched = skarn({
  name: 'Pole-pitched, autumn',
  pack: [
    'Single-skin shelter, pole-pitched',
    'Groundsheet, thin film',
    'Down quilt, 0 °C comfort',
    'Inflatable mat, three-quarter',
    'Light-framed pack, 40 L',
    'Sleep leggings, wool',
    ...kitchen,
  ],
  stakes: 8,
  gas: true,
})

export const twoSkin = skarn({
  name: 'Two-skin tent',
  pack: [
    'Two-skin tent, one person',
    'Down quilt, −6 °C comfort',
    'Inflatable mat, three-quarter',
    'Light-framed pack, 40 L',
    'Sleep leggings, wool',
    'Rain trousers',
    ...kitchen,
  ],
  stakes: 6,
  gas: true,
})

export const tarp = skarn({
  name: 'Tarp and bivouac bag',
  pack: [
    'Flat tarp, 2.4 × 1.5 m',
    'Bivouac bag, breathable',
    'Down quilt, 0 °C comfort',
    'Foam mat, torso length',
    'Frameless pack, 30 L',
    'Rain kilt',
  ],
  stakes: 6,
  gas: false,
})
