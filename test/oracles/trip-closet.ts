import type { Choosing } from '../../src-domain/choosing/trip-choice.ts'
import { filledByBrief } from '../../src-domain/checks/by-brief.ts'
import { emptyBrief, type Brief } from '../../src-domain/trips/brief.ts'
import { emptyWalker } from '../../src-domain/trips/walker.ts'
import { kitIndex, loadoutOf, supplyRow, type TestItem, type TestSupply } from '../domain/loadout/kit.ts'
import { mulberry } from './random-closet.ts'

/**
 * Small closets of invented things with the traits that the checks read, and a brief that poses a few of their questions: for choices
 * small enough to try every one of them on the rail.
 */
const shared = (duty: string, pieces = 1) => ({ duty, pieces, kind: 'shared' as const })

export function tripCloset(seed: number): readonly TestItem[] {
  const chance = mulberry(seed)
  const grams = (low: number, high: number) => Math.round(low + chance() * (high - low))
  const some = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)]!
  const pool: readonly (() => TestItem)[] = [
    () => ({
      name: 'quilt',
      area: 'sleep',
      g: grams(400, 900),
      duties: 'top-insulation',
      traits: { 'rated-temperature': grams(-15, 2), 'rating-kind': 'comfort', form: some(['quilt', 'bag']), 'packed-volume': grams(4, 9) },
    }),
    () => ({
      name: 'mat',
      area: 'sleep',
      g: grams(150, 500),
      duties: 'ground-insulation',
      traits: { 'thermal-resistance': grams(20, 90) / 100, 'pad-length': some(['full', 'torso']), 'packed-volume': 1 },
    }),
    () => ({
      name: 'pack',
      area: 'carry',
      g: grams(400, 1400),
      duties: some(['pack', 'pack dry-store*']),
      traits: { 'pack-volume': grams(9, 30), 'comfortable-load': grams(4, 12) },
    }),
    () => ({
      name: 'jacket',
      area: 'clothing',
      g: grams(200, 450),
      duties: 'big-jacket* mid-layer*',
      traits: { 'garment-clo': grams(20, 70) / 100, 'packed-volume': 2 },
    }),
    () => ({
      name: 'shell',
      area: 'clothing',
      g: grams(100, 350),
      duties: some(['rain-shell', 'rain-shell wind-shell*', 'rain-shell wind-shell']),
      traits: { 'cover-kind': some(['jacket', 'poncho', 'umbrella']), 'packed-volume': 1 },
    }),
    () => ({
      name: 'bottle',
      area: 'water',
      g: grams(25, 90),
      pieces: 2,
      duties: 'water-vessel',
      traits: { 'water-capacity': some([0.5, 1, 2]), 'packed-volume': 0.2 },
    }),
    () => ({
      name: 'lamp',
      area: 'light_power',
      g: grams(30, 90),
      duties: some(['light', 'light spare-light', 'spare-light']),
      traits: { 'burn-time': grams(1, 12), cell: 'lithium-ion', 'packed-volume': 0.1 },
    }),
    () => ({
      name: 'tarp',
      area: 'shelter',
      g: grams(250, 900),
      duties: 'shelter',
      needs: [{ duty: 'stake', pieces: 2, kind: 'reserved' }, ...(chance() < 0.5 ? [shared('pole')] : [])],
      traits: { 'packed-volume': 1.5 },
    }),
    () => ({ name: 'stakes', area: 'shelter', g: grams(8, 15), pieces: 3, duties: 'stake', traits: { 'packed-volume': 0.05 } }),
    () => ({ name: 'poles', area: 'carry', g: grams(120, 220), duties: 'pole', traits: { stowed: 'outside' } }),
  ]
  const count = 9 + Math.floor(chance() * 3)
  return Array.from({ length: count }, (_, i) => {
    const item = (i < 7 ? pool[(i * 3) % pool.length]! : some(pool))()
    return { ...item, name: `${item.name} ${i}` }
  })
}

const brief = (seed: number): Brief => {
  const chance = mulberry(seed + 99)
  const kept = ['shelter', 'pack', 'top-insulation', 'ground-insulation', 'rain-shell', 'light', 'mid-layer']
  const asked = kept.filter(() => chance() < 0.6)
  // A night out asks its own duties: all but the few looked at are struck, each with its reason.
  const others = [
    ...[
      'base-layer',
      'legwear',
      'shoes',
      'socks',
      'dry-base',
      'dry-store',
      'hygiene',
      'water-treatment',
      'water-vessel',
      'fire-starter',
      'navigation',
      'navigation-backup',
    ],
    ...['distress-signal', 'first-aid', 'repair', 'emergency-shelter', 'spare-light', 'hat', 'gloves', 'big-jacket'],
    ...kept.filter((duty) => !asked.includes(duty)),
  ]
  return {
    ...emptyBrief,
    nightsOut: 2,
    lowC: 4 + Math.round(chance() * 14),
    highC: 20,
    windKmh: 10,
    rain: chance() < 0.25 ? 'showers' : 'none',
    dryHours: chance() < 0.5 ? 1 + Math.round(chance()) : 0,
    sitMinutes: chance() < 0.75 ? 0 : 30,
    stopMinutes: 0,
    asked: asked.map((duty) => ({ duty, as: 'must' })),
    struck: others.map((duty) => ({ duty, reason: 'not looked at here' })),
  }
}

const supplies: readonly TestSupply[] = [{ name: 'paper', area: 'care' }]

export function tripChoosing(seed: number, more: Partial<Choosing> = {}, items = tripCloset(seed)): Choosing {
  const index = kitIndex(items, supplies)
  const loadout = loadoutOf(index, [supplyRow(900, 1, { amountMilli: 60_000 })])
  const trip = { startsOn: '2025-06-09', endsOn: '2025-06-11', zone: 'Europe/Berlin', season: 'summer' as const }
  return {
    asked: filledByBrief({ loadout, brief: brief(seed), trip, walker: { ...emptyWalker, bodyMassG: 70_000 }, today: '2025-06-01' }),
    closet: items.map((_, i) => ({ item: index.item(i + 1)!, usualLane: 'in_pack', materials: [] })),
    banned: [],
    principles: [],
    pinIn: [],
    pinOut: [],
    wants: true,
    notShort: false,
    wornFactor: 0,
    ...more,
  }
}
