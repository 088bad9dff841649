/**
 * How long things last: the median life of each class, the counter it is counted in, and how far lives spread (standard deviation of ln life, a choice).
 * All common practice unless a row says otherwise; every life is the person's to change. Rows with `date` are safety: inspected and retired by the maker's
 * rule or the printed date; the program never says "fine", only "due".
 */
import type { KitArea } from './vocabulary.ts'

export const counters = ['km', 'nights', 'days', 'litres', 'cycles', 'washes', 'years'] as const
export type Counter = (typeof counters)[number]

export interface LifeClass {
  readonly code: string
  readonly counter: Counter
  readonly life: number
  readonly sigma: number
  /** Units of the counter that a usual trip adds. */
  readonly perTrip: number
  /** Years from first use at which it ends whatever its use; null: none. */
  readonly limitYears: number | null
  /** Renewed by care: re-proofing, a new cell. Its counter then starts again. */
  readonly renewable: boolean
  readonly cite: string
  readonly known: 'read' | 'memory' | 'common practice, no source'
}

const practice = 'common practice, no source'
function counted(code: string, counter: Counter, life: number, sigma: number, cite: string, more: Partial<LifeClass> = {}): LifeClass {
  return { code, counter, life, sigma, perTrip: usualPerTrip[counter], limitYears: null, renewable: false, cite, known: practice, ...more }
}

/** What a usual trip adds (choice): three nights, 45 km, 15 l through a filter; `years` is age, no trip adds to it. */
export const usualPerTrip: Readonly<Record<Counter, number>> = { km: 45, nights: 3, days: 4, litres: 15, cycles: 2, washes: 0.3, years: 0 }

export const lifeClasses: readonly LifeClass[] = [
  counted(
    'light-shoes',
    'km',
    800,
    0.35,
    'tread and upper decide: foam to 70–80 % after 500 mi (Cook, Kester and Brunet 1985, as retold); peak force + 4.88 % after 500 km (Footwear Science 2010, doi 10.1080/19424280.2010.519348)',
  ),
  counted('boots', 'km', 1600, 0.35, practice),
  counted('socks', 'km', 700, 0.4, practice),
  counted('down', 'nights', 600, 0.5, 'lost warmth is mostly dirt and washes back'),
  counted('synthetic-fill', 'nights', 200, 0.4, 'loses loft with each compression'),
  counted('air-mat', 'nights', 250, 0.5, 'leaks can be mended'),
  counted('foam-mat', 'nights', 300, 0.3, 'flattens'),
  counted('shelter', 'nights', 250, 0.5, 'sunlight is the cause; a night pitched in sun counts twice, at height one and a half times'),
  counted('water-repellency', 'days', 25, 0.5, 'or 10 washes; renewed by re-proofing', { renewable: true }),
  counted('shell', 'days', 300, 0.5, 'membrane and seams'),
  counted('pack', 'days', 500, 0.5, practice),
  counted('hollow-filter', 'litres', 1000, 0.5, 'the maker’s figure where there is one; frozen wet ends it at once', { renewable: true }),
  counted('cartridge-filter', 'litres', 1000, 0.5, 'the maker’s figure', { renewable: true }),
  counted('stove-seals', 'years', 5, 0.3, 'rings of a valve', { renewable: true }),
  counted('lithium-ion', 'cycles', 500, 0.3, 'full cycles to 80 % of the capacity, a typical rating', { renewable: true, known: 'memory' }),
  counted('nimh', 'cycles', 500, 0.4, practice, { renewable: true, known: 'memory' }),
  counted('pole-tips', 'km', 1500, 0.4, practice, { renewable: true }),
]

/** Safety: the date and the maker's text alone. `limitYears` from making or first use, the most any maker states. */
export interface DatedClass {
  readonly code: string
  readonly limitYears: number | null
  readonly cite: string
  readonly known: 'read' | 'memory' | 'common practice, no source'
}

export const datedClasses: readonly DatedClass[] = [
  { code: 'gas-canister', limitYears: 10, cite: 'age, rust or a dent: do not use', known: practice },
  { code: 'beacon', limitYears: null, cite: 'the date printed on its battery, about 5 to 6 years', known: 'memory' },
  {
    code: 'rope',
    limitYears: 10,
    cite: 'makers state 10 years at most unused; use shortens it to years or months; a hard fall, chemicals or core damage end it: the maker’s leaflet decides',
    known: 'read',
  },
  { code: 'helmet', limitYears: 10, cite: 'the maker’s figure, commonly 10 years; one hard blow ends it', known: 'memory' },
  { code: 'traction', limitYears: null, cite: 'inspect before each use', known: practice },
  { code: 'printed-date', limitYears: null, cite: 'the date printed on the pack', known: 'read' },
]

export const lifeClassByCode: ReadonlyMap<string, LifeClass> = new Map(lifeClasses.map((one) => [one.code, one]))
export const datedClassByCode: ReadonlyMap<string, DatedClass> = new Map(datedClasses.map((one) => [one.code, one]))

export interface Worn {
  readonly kitArea: KitArea
  readonly duties: readonly string[]
  readonly traits: readonly { readonly code: string; readonly text: string }[]
}

/** First duty that tells the class; the rest goes by fill, traits and kit area. */
const byDuty: readonly (readonly [string, string])[] = [
  ['rope', 'rope'],
  ['helmet', 'helmet'],
  ['traction', 'traction'],
  ['avalanche', 'beacon'],
  ['distress-signal', 'beacon'],
  ['first-aid', 'printed-date'],
  ['medicine', 'printed-date'],
  ['shoes', 'light-shoes'],
  ['socks', 'socks'],
  ['pack', 'pack'],
  ['shelter', 'shelter'],
  ['rain-shell', 'shell'],
  ['rain-legs', 'shell'],
  ['ground-insulation', 'air-mat'],
  ['stove', 'stove-seals'],
]

/** The class a thing usually belongs to; null: none is known, no life is counted. */
export function usualLifeClass(thing: Worn): string | null {
  const text = (code: string): string => thing.traits.find((trait) => trait.code === code)?.text ?? ''
  const duty = byDuty.find(([code]) => thing.duties.includes(code))
  if (
    duty?.[1] === 'stove-seals' &&
    thing.traits.some((trait) => trait.code === 'fuels') &&
    !['gas', 'petrol', 'paraffin'].includes(text('fuels'))
  )
    return null
  if (duty !== undefined) return duty[1]
  if (text('fill') === 'down') return 'down'
  if (text('fill') === 'synthetic') return 'synthetic-fill'
  if (text('treatment-kind') === 'filter' || text('treatment-kind') === 'purifier') return 'hollow-filter'
  if (text('cell') === 'lithium-ion') return 'lithium-ion'
  return text('cell') === 'nimh' ? 'nimh' : null
}
