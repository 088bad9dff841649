import { constant, given, scaled, work, type Figure, type Law } from '../figures/figure.ts'
import { itemLines, traitNumber, traitOf, type Loadout } from '../loadout/loadout.ts'
import { heaviestPack } from '../loadout/moments.ts'
import { COMFORT_SHARE } from '../laws/pack-comfort.ts'
import { found, unknown, type Check } from './check.ts'
import { isPack } from './packed-things.ts'

/**
 * Load on the pack: is it carried within the comfort of this pack at its heaviest moment?
 *   have: pack weight at the trailhead or after a resupply, the most of them · need: comfortable load · enough: 0.9 of it        kg, at most
 * u: half the band of the mass, which is its standard uncertainty. A pack without a figure of its own makes it unknown: none is taken from its kind.
 * Source: provisions.md 5 (common practice; the figure is the maker's or the walker's).
 */
export const packLoad: Check = {
  id: 'pack-load',
  label: 'Load on the pack',
  duties: ['pack'],
  withoutBrief: false,
  find({ loadout, brief, trip }) {
    const comfort = comfortOf(loadout)
    if ('missing' in comfort) return unknown(comfort.missing, comfort.name === undefined ? undefined : { name: comfort.name })
    const heaviest = heaviestPack(loadout, { brief, trip })
    const { withoutMass } = heaviest.sum
    if (withoutMass.length > 0) return unknown('mass', { name: withoutMass[0]!, more: withoutMass.length - 1 })
    return found({
      have: scaled(heaviest.sum.figure, 0.001, 'kg', 'pack weight at its heaviest', 'g/1000'),
      need: comfort.load,
      enough: work(nineTenths, { load: comfort.load, share: constant(COMFORT_SHARE, '1', 'choice') }),
      wants: 'at most',
      saying: [{ code: 'heaviest', facts: { day: heaviest.moment.day, what: heaviest.moment.what } }],
    })
  },
}

type Comfort = { readonly load: Figure<'kg'> } | { readonly missing: string; readonly name?: string }

/** Of several packs the one that carries most. */
function comfortOf(loadout: Loadout): Comfort {
  const packs = itemLines(loadout).filter((line) => isPack(line.item) && line.carriedBy === '')
  if (packs.length === 0) return { missing: 'pack' }
  const told = packs.filter((line) => traitNumber(line.item, 'comfortable-load') !== null)
  if (told.length === 0) return { missing: 'comfortable-load', name: packs[0]!.item.name }
  const best = told.reduce((most, line) =>
    traitNumber(line.item, 'comfortable-load')! > traitNumber(most.item, 'comfortable-load')! ? line : most,
  )
  const trait = traitOf(best.item, 'comfortable-load')!
  return { load: given(trait.number!, 'kg', trait.origin, {}, best.item.name) }
}

const nineTenths = {
  name: 'Well within comfort',
  formula: '0.9·load',
  source: { cite: '0.9 of the comfortable load', known: 'choice' },
  takes: { load: 'kg', share: '1' },
  unit: 'kg',
  compute: ({ load, share }) => load * share,
} as const satisfies Law<{ load: 'kg'; share: '1' }, 'kg'>
