import type { Use, Verdict, VerdictChange } from '../../../src-domain/trips/record.ts'

/** Invented trips of the years before: which loadout's things went, what stayed at home, and what was said of some. Of the rest nobody said anything. */
export interface DemoPast {
  readonly name: string
  readonly month: string
  readonly nights: number
  readonly km: number
  readonly lowC: number | null
  readonly season: 'Summer' | 'Autumn' | 'Early spring'
  readonly loadout: string
  readonly stayed?: readonly string[]
  readonly said?: readonly DemoSaid[]
}

export interface DemoSaid {
  readonly name: string
  readonly use: Use
  readonly verdict?: Verdict
  readonly change?: VerdictChange
  readonly note?: string
}

const used = (...names: readonly string[]): readonly DemoSaid[] => names.map((name) => ({ name, use: 'used', verdict: 'keep' }))
const unused = (name: string, note = ''): DemoSaid => ({ name, use: 'unused', note })
const always = ['Trail shoes', 'Wool socks', 'Rain jacket', 'Soft bottles, 1 L', 'Squeeze filter']

export const demoPast: readonly DemoPast[] = [
  {
    name: 'Tarn round',
    month: '2024-06',
    nights: 2,
    km: 34,
    lowC: 7,
    season: 'Summer',
    loadout: 'Summer ridge',
    stayed: ['Power bank, 37 Wh'],
    said: [...used(...always, 'Frameless pack, 30 L'), unused('Wind shirt', 'No wind at all.')],
  },
  {
    name: 'Moor crossing',
    month: '2024-08',
    nights: 1,
    km: 41,
    lowC: 9,
    season: 'Summer',
    loadout: 'Summer ridge',
    said: [...used(...always), unused('Power bank, 37 Wh'), unused('Wind shirt')],
  },
  {
    name: 'Birch valley in leaf fall',
    month: '2024-10',
    nights: 2,
    km: 38,
    lowC: 0,
    season: 'Autumn',
    loadout: 'Two-skin tent',
    said: [
      ...used(...always, 'Headlamp'),
      { name: 'Two-skin tent, one person', use: 'used', verdict: 'drop', change: 'weight', note: 'Warm and dry, and twice the weight.' },
      unused('Power bank, 37 Wh'),
    ],
  },
  {
    name: 'First thaw',
    month: '2025-03',
    nights: 1,
    km: 22,
    lowC: -4,
    season: 'Early spring',
    loadout: 'Two-skin tent',
    said: [
      ...used(...always, 'Headlamp', 'Hat and liner gloves'),
      { name: 'Map and compass', use: 'missed', note: 'in the car' },
      unused('Power bank, 37 Wh'),
    ],
  },
  {
    name: 'Coast path, four bays',
    month: '2025-06',
    nights: 3,
    km: 64,
    lowC: null,
    season: 'Summer',
    loadout: 'Summer ridge',
    stayed: ['Wind shirt'],
    said: [...used(...always, 'Power bank, 37 Wh', 'Phone in its case')],
  },
  {
    name: 'Long weekend on the plateau',
    month: '2025-08',
    nights: 2,
    km: 47,
    lowC: 3,
    season: 'Summer',
    loadout: 'Summer ridge',
    said: [
      ...used('Trail shoes', 'Wool socks', 'Rain jacket', 'Headlamp'),
      unused('Wind shirt'),
      { name: 'Squeeze filter', use: 'failed', verdict: 'adjust', change: 'mend', note: 'Slow: rinse it.' },
    ],
  },
]
