import { constant, given, total, work, type Figure, type Given } from '../figures/figure.ts'
import { itemLines, traitNumber, traitOf, type KitItem, type Loadout } from '../loadout/loadout.ts'
import { nameOf } from '../loadout/mass.ts'
import { momentsOf, packLinesAt, type Moment } from '../loadout/moments.ts'
import type { BriefEntries } from '../loadout/amounts.ts'
import { HARD_FILL, MEASURED_U_SHARE, PACK_U_SHARE, packedRoom, ROOM_MARGIN, SOFT_FILL } from '../laws/packed-volume.ts'
import { found, notAsked, unknown, type Check } from './check.ts'
import { enoughOf } from './margin.ts'
import { isPack, roomOf } from './packed-things.ts'

/**
 * Room in the pack: does everything that goes inside fit at the fullest moment?
 *   have: litres of the pack · need: Σ Vi/f at the trailhead and after each resupply, the most of them · enough: 1.05·need        l, at least
 *   f 0.95, with a hard canister 0.85 (choice); outside and nested things count nothing
 * u: the pack's claimed litres ± 10 % as a rectangle, each thing measured 5 % or by class 30 % as a rectangle. Source: provisions.md 5.
 */
export const room: Check = {
  id: 'room',
  label: 'Room in the pack',
  duties: ['pack'],
  withoutBrief: false,
  find({ loadout, brief, trip }) {
    const pack = packOf(loadout)
    if (pack === null) return unknown('pack')
    if (!pack.ok) return unknown('pack-volume', { name: pack.name })
    const fullest = fullestMoment(loadout, { brief, trip })
    if ('missing' in fullest) return unknown('packed-volume', { name: fullest.missing })
    if (fullest.litres.value === 0) return notAsked('nothing-inside')
    return found({
      have: pack.litres,
      need: fullest.litres,
      enough: enoughOf(fullest.litres, ROOM_MARGIN),
      wants: 'at least',
      saying: [{ code: 'fullest', facts: { day: fullest.moment.day, what: fullest.moment.what } }],
    })
  },
}

type Pack = { readonly ok: true; readonly litres: Figure<'l'> } | { readonly ok: false; readonly name: string } | null

/** Litres of all packs that go; null: no pack. */
function packOf(loadout: Loadout): Pack {
  const packs = itemLines(loadout).filter((line) => isPack(line.item) && line.carriedBy === '')
  if (packs.length === 0) return null
  const silent = packs.find((line) => traitNumber(line.item, 'pack-volume') === null)
  if (silent !== undefined) return { ok: false, name: silent.item.name }
  return {
    ok: true,
    litres: total(
      'room in the pack',
      'l',
      packs.map((line) => ({ name: line.item.name, figure: packLitres(line.item, line.pieces) })),
    ),
  }
}

function packLitres(item: KitItem, pieces: number): Figure<'l'> {
  const trait = traitOf(item, 'pack-volume')!
  const litres = trait.number! * pieces
  const share = trait.origin === 'measured' ? MEASURED_U_SHARE : PACK_U_SHARE
  return given(litres, 'l', trait.origin, { [`room:${item.uid}`]: litres * share })
}

type Fullest = { readonly litres: Figure<'l'>; readonly moment: Moment } | { readonly missing: string }

function fullestMoment(loadout: Loadout, entries: BriefEntries): Fullest {
  const hasBox = itemLines(loadout).some((line) => line.carriedBy === '' && traitNumber(line.item, 'hard-canister') !== null)
  let fullest: { readonly litres: Figure<'l'>; readonly moment: Moment } | null = null
  for (const moment of momentsOf(loadout, entries)) {
    const litres = litresAt(loadout, moment, entries, hasBox)
    if ('missing' in litres) return litres
    if (fullest === null || litres.need.value > fullest.litres.value) fullest = { litres: litres.need, moment }
  }
  return fullest!
}

function litresAt(
  loadout: Loadout,
  moment: Moment,
  entries: BriefEntries,
  hasBox: boolean,
): { readonly need: Figure<'l'> } | { readonly missing: string } {
  const parts: Given[] = []
  for (const line of packLinesAt(loadout, moment.day, entries)) {
    const own = roomOf(line)
    if (!own.ok) return { missing: own.name }
    if (own.litres !== null) parts.push({ name: nameOf(line), figure: own.litres })
  }
  const fill = hasBox ? constant(HARD_FILL, '1', 'with a hard canister (choice)') : constant(SOFT_FILL, '1', 'soft gear (choice)')
  return { need: work(packedRoom, { volumeL: total('things inside', 'l', parts), fill }) }
}
